package org.collarbook.intake;

import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.compliance.Changes;
import org.collarbook.compliance.PastFills;
import org.collarbook.compliance.Requirements;
import org.collarbook.custody.Fill;
import org.collarbook.custody.Fills;
import org.collarbook.custody.PlaceBatch.CustomerLine;
import org.collarbook.custody.PlaceBatch.Placing;
import org.collarbook.custody.PlaceBatch.SiteLine;
import org.collarbook.custody.PlaceBatch;
import org.collarbook.holds.Recalls;
import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.inspection.Requalifications;
import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.platform.Journal;
import org.collarbook.registry.ContainerBatch.Change;
import org.collarbook.registry.ContainerBatch;
import org.collarbook.registry.Declarations;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** The commit: writes each batch of rows through the lower modules, with the due months that follow from it. */
@Component
class IntoRegister implements Sink {

    private final ContainerBatch containers;
    private final PlaceBatch places;
    private final Requalifications requalifications;
    private final Fills fills;
    private final Requirements requirements;
    private final Recalls recalls;
    private final Journal journal;
    private final PastFills pastFills;
    private final Declarations declarations;
    private final Extras extras;
    private final Clock clock;

    IntoRegister(ContainerBatch containers, PlaceBatch places, Requalifications requalifications, Fills fills,
            Requirements requirements, Recalls recalls, Journal journal, PastFills pastFills, Declarations declarations,
            Extras extras, Clock clock) {
        this.declarations = declarations;
        this.extras = extras;
        this.pastFills = pastFills;
        this.journal = journal;
        this.containers = containers;
        this.places = places;
        this.requalifications = requalifications;
        this.fills = fills;
        this.requirements = requirements;
        this.recalls = recalls;
        this.clock = clock;
    }

    /** A write and the container it goes to. */
    record Written(UUID id, Write write) {}

    @Override
    public void take(BatchPlaces given, List<Write> writes, Terms terms) {
        var opened = open(given, terms);
        if (writes.isEmpty()) {
            return;
        }
        declarations(writes, terms);
        var written = containers(writes, terms);
        place(written, given, opened, terms);
        tests(written, terms);
        fills(written, terms);
        extras.take(written, terms);
        assess(written);
        if (recalls.areRunning()) {
            recalls.holdMatching(written.stream().map(Written::id).toList());
        }
    }

    @Override
    public boolean isForetelling() {
        return false;
    }

    private void assess(List<Written> written) {
        var fresh = written.stream().filter(one -> one.write.before() == null).map(Written::id).toList();
        var known = written.stream().filter(one -> one.write.before() != null).map(Written::id).toList();
        journal.enter(known);
        requirements.reassess(known);
        pastFills.judge(known.stream().collect(Collectors.toMap(id -> id, id -> Changes.EVER)));
        journal.enterFirst(fresh);
        requirements.assessFirst(fresh);
    }

    private void declarations(List<Write> writes, Terms terms) {
        var said = writes.stream().flatMap(write -> write.declared().stream()).distinct().toList();
        if (!said.isEmpty()) {
            declarations.addUnknown(said, terms.by());
        }
    }

    /** The ids of the sites opened, by code. */
    private Map<String, UUID> open(BatchPlaces given, Terms terms) {
        if (given.newSites().isEmpty()) {
            return Map.of();
        }
        Map<String, UUID> customers = given.newCustomers().isEmpty()
                ? Map.of()
                : places.upsertCustomers(given.newCustomers().stream()
                        .map(customer -> new CustomerLine(customer.code(), customer.name())).toList());
        return places.upsertSites(given.newSites().stream().map(site -> new SiteLine(site.code(), site.name(),
                site.kind(), customerId(site, customers), site.address(), site.coordinates(), site.zone(),
                site.jurisdiction())).toList());
    }

    private static @Nullable UUID customerId(KnownSite site, Map<String, UUID> opened) {
        var customer = site.customer();
        return customer == null ? null : customer.id() == null ? opened.get(customer.code()) : customer.id();
    }

    private List<Written> containers(List<Write> writes, Terms terms) {
        var fresh = writes.stream().filter(write -> write.before() == null).toList();
        var ids = fresh.isEmpty()
                ? List.<UUID>of()
                : containers.insert(fresh.stream().map(Write::after).toList(), terms.by());
        var written = new ArrayList<Written>(writes.size());
        for (int i = 0; i < ids.size(); i++) {
            written.add(new Written(ids.get(i), fresh.get(i)));
        }
        var changes = new ArrayList<Change>();
        for (var write : writes) {
            var before = write.before();
            if (before != null) {
                written.add(new Written(before.id(), write));
                if (write.isContentNew()) {
                    changes.add(new Change(before, write.after()));
                }
            }
        }
        if (fresh.size() < writes.size()) {
            containers.refuseMerged(written.stream().filter(one -> one.write.before() != null).map(Written::id)
                    .toList());
        }
        containers.update(changes, "ledger import " + terms.importId(), terms.by());
        return written;
    }

    private void place(List<Written> written, BatchPlaces given, Map<String, UUID> opened, Terms terms) {
        var now = clock.instant();
        var placings = new ArrayList<Placing>();
        var ids = new HashMap<>(opened);
        for (var one : written) {
            var code = one.write.toSite();
            if (code != null) {
                var site = ids.computeIfAbsent(code, known -> Objects.requireNonNull(Objects
                        .requireNonNull(given.site(known), known).id(), known));
                placings.add(new Placing(one.id, site, now));
            }
        }
        if (!placings.isEmpty()) {
            places.place(placings, terms.by());
        }
    }

    private void tests(List<Written> written, Terms terms) {
        var entries = new ArrayList<RequalificationEntry>();
        for (var one : written) {
            for (var test : one.write.tests()) {
                entries.add(new RequalificationEntry(one.id, test.done(), test.asStamped(),
                        declaration(test, one.write, terms), test.performedOn()));
            }
        }
        if (!entries.isEmpty()) {
            requalifications.insert(entries, terms.by());
        }
    }

    private static @Nullable UUID declaration(LastTest test, Write write, Terms terms) {
        return switch (test.declared()) {
            case LastTest.NOT_DECLARED -> null;
            case LastTest.BY_LEDGER -> Objects.requireNonNull(terms.said()).id();
            default -> write.declared().get(test.declared() - 1).id();
        };
    }

    private void fills(List<Written> written, Terms terms) {
        var made = new ArrayList<Fill>();
        for (var one : written) {
            var day = one.write.fill();
            if (day != null) {
                made.add(new Fill(one.id, day, null));
            }
        }
        if (!made.isEmpty()) {
            fills.insert(made, terms.by());
        }
    }
}
