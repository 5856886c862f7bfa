package org.collarbook.intake;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.intake.Besides.GivenStop;
import org.collarbook.intake.Besides.Standing;
import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.intake.Write.Extra;
import org.collarbook.intake.Write.GivenPartLine;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.registry.fittings.Part;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Requalification;

/** Fits what few rows tell to what the register knows: what is known is left, and nothing that keeps out is lifted. */
record BesidesFit(KnownBesides known) {

    static Extra fresh(Besides given) {
        return given == Besides.NOTHING
                ? Extra.NOTHING
                : new Extra(given.holds(), given.parts().stream().map(part -> new GivenPartLine(part, null)).toList(),
                        given.stops(), given.emptiedOn());
    }

    Extra changed(RegisteredContainer before, Besides given, List<RequalificationEntry> history, Problems problems) {
        if (given == Besides.NOTHING) {
            return Extra.NOTHING;
        }
        var standing = known.holds().getOrDefault(before.id(), List.of()).stream().map(hold -> hold.reason())
                .collect(Collectors.toSet());
        if (given.inService()) {
            remarkStanding(standing, history, problems);
        }
        var emptied = given.emptiedOn();
        return new Extra(given.holds().stream().filter(hold -> !standing.contains(hold.reason())).toList(),
                parts(before, given), stops(before, given.stops(), problems),
                emptied == null || known.emptied().getOrDefault(before.id(), Set.of()).contains(emptied)
                        ? null
                        : emptied);
    }

    private static void remarkStanding(Set<?> holds, List<RequalificationEntry> history, Problems problems) {
        var standing = holds.stream().map(Object::toString).sorted().collect(Collectors.toCollection(ArrayList::new));
        history.stream().map(one -> one.requalification().result()).filter(result -> result == Result.CONDEMNED)
                .findFirst().ifPresent(result -> standing.add(result.name()));
        if (!standing.isEmpty()) {
            problems.remark(LedgerColumn.STATUS, "HOLD_STAYS", StatusReader.IN_SERVICE, "the register keeps "
                    + String.join(", ", standing) + ": a hold is lifted by what lifts it, never by a ledger");
        }
    }

    private List<GivenPartLine> parts(RegisteredContainer before, Besides given) {
        var had = known.parts().getOrDefault(before.id(), List.of());
        var lines = new ArrayList<GivenPartLine>();
        for (var part : given.parts()) {
            var same = had.stream().filter(one -> one.fitted().equals(part.fitted())).findFirst();
            if (same.isEmpty() || same.get().removal() == null && part.removal() != null) {
                lines.add(new GivenPartLine(part, same.map(Part::id).orElse(null)));
            }
        }
        return lines;
    }

    private List<GivenStop> stops(RegisteredContainer before, List<GivenStop> given, Problems problems) {
        var had = known.stops().getOrDefault(before.id(), List.of());
        var added = new ArrayList<GivenStop>();
        for (var stop : given) {
            var same = had.stream().filter(one -> one.since().equals(stop.since())).findFirst();
            if (same.isEmpty()) {
                added.add(stop);
            } else if (same.get().returnedOn() == null && stop.returnedOn() != null) {
                problems.remark(LedgerColumn.OUT_OF_SERVICE, "HOLD_STAYS", stop.since() + " to " + stop.returnedOn(),
                        "the register keeps it out of service since " + stop.since() + ": record its return");
            }
        }
        return added;
    }

    /** The words condemned and rejected as entries of the history, those that it does not have. */
    static List<LastTest> standing(Besides given, List<RequalificationEntry> history) {
        return given.standing().stream().filter(one -> !stands(one, history))
                .map(one -> new LastTest(
                        new Requalification(one.month(), null, false, false, null, false,
                                one.condemned() ? Result.CONDEMNED : Result.REJECTED),
                        null,
                        null, LastTest.NOT_DECLARED))
                .toList();
    }

    private static boolean stands(Standing told, List<RequalificationEntry> history) {
        var result = told.condemned() ? Result.CONDEMNED : Result.REJECTED;
        var since = history.stream().map(RequalificationEntry::requalification)
                .filter(one -> one.result() == result && (!told.isDated() || one.month().equals(told.month())))
                .map(Requalification::month).max(YearMonth::compareTo);
        return since.isPresent() && (told.condemned() || told.isDated() || !isAnswered(since.get(), history));
    }

    private static boolean isAnswered(YearMonth rejected, List<RequalificationEntry> history) {
        return history.stream().map(RequalificationEntry::requalification)
                .anyMatch(one -> one.result() == Result.PASSED && one.month().isAfter(rejected));
    }
}
