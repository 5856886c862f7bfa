package org.collarbook.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BiFunction;

import org.collarbook.intake.KnownSite.KnownCustomer;
import org.collarbook.intake.LedgerEntry.GivenSite;
import org.jspecify.annotations.Nullable;

/**
 * One walk through a ledger. Check and commit are this same walk over the file with another {@link Sink}, so that the
 * check tells what the commit will do. The other way was to keep a staging copy of every row at the check and write from
 * that: it stores each ledger twice more, and a staged row is as outdated by the time of the commit as a report is.
 *
 * <p>Rows go in batches: each look-up and each write is one statement for all rows of a batch, and nothing is kept from
 * one batch to the next but what {@link Claims} and the check's places keep in temporary tables, and the places met last.
 */
final class LedgerPass {

    static final int BATCH = 2000;

    private final RegisterView view;
    private final KnownPlaces knownPlaces;
    private final Claims claims;
    private final Outcomes outcomes;
    private final Sink sink;
    private final Terms terms;
    private final Recalled<KnownSite> knownSites = new Recalled<>();
    private final Recalled<KnownCustomer> knownCustomers = new Recalled<>();

    LedgerPass(RegisterView view, KnownPlaces knownPlaces, Claims claims, Outcomes outcomes, Sink sink, Terms terms) {
        this.view = view;
        this.knownPlaces = knownPlaces;
        this.claims = claims;
        this.outcomes = outcomes;
        this.sink = sink;
        this.terms = terms;
    }

    /**
     * The next batch is judged by itself while the database is busy with the last one. The file is read on the caller's
     * thread only: it comes from the database, within the transaction that belongs to this thread.
     */
    Outcomes.Counts over(InputStream file) throws IOException {
        var entries = new EntryReader(terms.asOf(), terms.said());
        try (var reader = new LedgerReader(file, terms.map()); var aside = Executors.newSingleThreadExecutor()) {
            var next = judged(batch(reader), entries, aside);
            for (var batch = next.get(); !batch.isEmpty(); batch = next.get()) {
                next = judged(batch(reader), entries, aside);
                settle(batch);
            }
        } catch (ExecutionException failed) {
            throw new IllegalStateException(failed.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("the pass was interrupted");
        }
        return outcomes.finish();
    }

    private static Future<List<Line>> judged(List<LedgerRow> rows, EntryReader entries, ExecutorService aside) {
        return aside.submit(() -> rows.stream().map(row -> new Line(row, entries)).toList());
    }

    private static List<LedgerRow> batch(LedgerReader reader) throws IOException {
        var batch = new ArrayList<LedgerRow>(BATCH);
        while (batch.size() < BATCH) {
            var row = reader.next();
            if (row == null) {
                break;
            }
            batch.add(row);
        }
        return batch;
    }

    private void settle(List<Line> batch) {
        refuseTwins(batch);
        var rows = new ArrayList<LedgerEntry>(batch.size());
        for (var line : batch) {
            var entry = line.entry();
            if (entry != null) {
                rows.add(entry);
            }
        }
        if (!rows.isEmpty()) {
            fit(batch, rows);
        }
        outcomes.add(batch);
    }

    private void fit(List<Line> batch, List<LedgerEntry> rows) {
        var places = places(rows);
        var fit = new BatchFit(view.of(rows), places, terms.said());
        var writes = new ArrayList<Write>(rows.size());
        var givenUp = new LinkedHashMap<UUID, Long>();
        for (var line : batch) {
            var row = line.entry();
            var write = row == null ? null : fit.fit(line, row);
            if (write != null && !write.isEmpty()) {
                writes.add(write);
                var before = write.before();
                if (before != null && before.tag() != null && !before.tag().equals(write.after().tag())) {
                    givenUp.put(Claims.digest(before.tag()), line.number());
                }
            }
        }
        claims.claim(givenUp);
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
        return new BatchPlaces(knownSites.of(sites, knownPlaces::sites),
                knownCustomers.of(customers, knownPlaces::customers), terms);
    }

    /** The later of two rows with one natural key, and of two containers with one tag, is refused. */
    private void refuseTwins(List<Line> batch) {
        var wanted = new LinkedHashMap<UUID, Long>();
        refuseTwins(batch, (digest, line) -> wanted.putIfAbsent(digest, line.number()));
        var taken = claims.claim(wanted);
        if (!taken.isEmpty()) {
            refuseTwins(batch, (digest, line) -> taken.get(digest));
        }
    }

    private static void refuseTwins(List<Line> batch, BiFunction<UUID, Line, @Nullable Long> earlier) {
        for (var line : batch) {
            var row = line.entry();
            var key = line.key();
            if (row != null && key != null && !isRefusedByKey(line, row, earlier.apply(key, line))
                    && row.tag() != null) {
                refuseByTag(line, row, earlier.apply(Claims.digest(row.tag()), line));
            }
        }
    }

    private static boolean isRefusedByKey(Line line, LedgerEntry row, @Nullable Long earlier) {
        if (earlier == null) {
            return false;
        }
        line.problems().refuse(LedgerColumn.SERIAL, "DUPLICATE_IN_FILE", row.marks().serial().asStamped(),
                "each container once: line " + earlier + " has the same specification, maker, serial and month");
        return true;
    }

    private static void refuseByTag(Line line, LedgerEntry row, @Nullable Long earlier) {
        if (earlier != null) {
            line.problems().refuse(LedgerColumn.TAG, "TAG_IN_USE", String.valueOf(row.tag()),
                    "each tag once: line " + earlier + " has it, or takes it off its container");
        }
    }
}
