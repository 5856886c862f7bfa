package org.collarbook.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

import org.collarbook.intake.KnownSite.KnownCustomer;
import org.collarbook.intake.LedgerEntry.GivenSite;
import org.jspecify.annotations.Nullable;

/**
 * Settles the rows of a batch in their order: what each may be, how it fits the register, and what it brings there.
 */
final class SettleBatch {

    private final RegisterView view;
    private final KnownPlaces knownPlaces;
    private final Claims claims;
    private final Sink sink;
    private final Terms terms;
    private final @Nullable Foretold foretold;
    private final Recalled<KnownSite> knownSites = new Recalled<>();
    private final Recalled<KnownCustomer> knownCustomers = new Recalled<>();

    SettleBatch(RegisterView view, KnownPlaces knownPlaces, Claims claims, Sink sink, Terms terms,
            @Nullable Foretold foretold) {
        this.foretold = foretold;
        this.view = view;
        this.knownPlaces = knownPlaces;
        this.claims = claims;
        this.sink = sink;
        this.terms = terms;
    }

    void settle(List<Line> batch) {
        settleReadable(batch);
        batch.forEach(Line::tellWhatIsLost);
    }

    private void settleReadable(List<Line> batch) {
        var lines = batch.stream().filter(line -> line.entry() != null).toList();
        if (lines.isEmpty()) {
            return;
        }
        var rows = lines.stream().map(line -> Objects.requireNonNull(line.entry())).toList();
        var places = places(rows);
        var known = view.of(rows);
        var doubts = new Doubts(known, claims.earlier(lines));
        var fit = new BatchFit(known, places, terms.said());
        var writes = new ArrayList<Write>(rows.size());
        for (int i = 0; i < rows.size(); i++) {
            var line = lines.get(i);
            var write = doubts.keepOut(line, rows.get(i)) ? null : fit.fit(line, rows.get(i));
            if (write != null) {
                doubts.taken(line, rows.get(i), write);
                if (!write.isEmpty()) {
                    writes.add(write);
                }
            }
        }
        if (foretold != null) {
            foretold.tellWhatCameBetween(lines);
        }
        claims.add(doubts.claimed());
        sink.take(places, writes, terms);
    }

    private BatchPlaces places(List<LedgerEntry> rows) {
        Set<String> sites = new HashSet<>();
        Set<String> customers = new HashSet<>();
        for (var row : rows) {
            GivenSite site = row.site();
            if (site != null) {
                sites.add(site.code());
                if (site.customer() != null) {
                    customers.add(site.customer());
                }
            }
        }
        return new BatchPlaces(knownSites.of(sites, codes -> knownPlaces.sites(codes, sink.isForetelling())),
                knownCustomers.of(customers, codes -> knownPlaces.customers(codes, sink.isForetelling())), terms);
    }
}
