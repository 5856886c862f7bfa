package org.collarbook.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.NewContainer;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;

/** Fits the rows of one batch, in their order, to what the register knows. */
final class BatchFit {

    private final Known known;
    private final BatchPlaces places;
    private final @Nullable Declaration said;
    private final BesidesFit besides;
    private final DeclaredFit declared;

    BatchFit(Known known, BatchPlaces places, @Nullable Declaration said) {
        this.known = known;
        this.places = places;
        this.said = said;
        this.besides = new BesidesFit(known.besides());
        this.declared = new DeclaredFit(known.besides());
    }

    /** What the row brings, or null where it is kept out; its problems and outcome are set. */
    @Nullable
    Write fit(Line line, LedgerEntry row) {
        var before = known.containers().get(row.key());
        var problems = line.problems();
        if (before != null && known.closed().contains(before.id())) {
            problems.refuse(LedgerColumn.SERIAL, "MERGED", row.marks().serial().asStamped(), "marks that are right:"
                    + " container " + before.id() + ", which bears these, was merged into another");
            return null;
        }
        if (row.site() != null && !places.admit(row.site(), problems)) {
            return null;
        }
        var write = before == null ? fresh(row, problems) : changed(before, row, problems);
        line.became(before == null
                ? Line.Outcome.NEW
                : write.isEmpty() ? Line.Outcome.UNCHANGED : Line.Outcome.CHANGED);
        return write;
    }

    private Write fresh(LedgerEntry row, Problems problems) {
        var counting = DeclaredFit.counting(said, row, problems);
        var saids = declared.identified(row, problems);
        var content = declared.laid(NewContainer.of(row.marks(), row.particulars(), row.tag()), null, row, saids,
                problems);
        if (counting != null) {
            var completed = content.particulars().completedBy(counting);
            var all = new HashSet<>(content.declared());
            all.addAll(completed.declared());
            content = new NewContainer(row.marks(), completed.particulars(), row.tag(), counting.id(), all,
                    content.further());
        }
        return new Write(null, content, true, row.site() == null ? null : row.site().code(),
                told(row, saids, List.of()), row.filledOn(), BesidesFit.fresh(row.besides()), present(saids));
    }

    private Write changed(RegisteredContainer before, LedgerEntry row, Problems problems) {
        var merge = new Merge(before, row, DeclaredFit.counting(said, row, problems));
        var history = known.history(before);
        var saids = declared.identified(row, problems);
        var after = declared.laid(merge.after(history, problems), before, row, saids, problems);
        Easing.tell(before.content(), after, problems);
        var day = row.filledOn();
        boolean filledAnew = day != null
                && !known.fills().getOrDefault(before.id(), Set.of()).contains(day);
        boolean moved = row.site() != null && !row.site().code().equals(known.siteCodes().get(before.id()));
        return new Write(before, after, merge.changes(after), moved ? row.site().code() : null,
                unknown(told(row, saids, history), history, problems), filledAnew ? day : null,
                besides.changed(before, row.besides(), history, problems), present(saids));
    }

    private static List<Declaration> present(List<@Nullable Declaration> saids) {
        return saids.isEmpty() ? List.of() : saids.stream().filter(Objects::nonNull).toList();
    }

    /** The tests of the row. One that passed by a declaration that does not count is not known to have passed. */
    private static List<LastTest> told(LedgerEntry row, List<@Nullable Declaration> saids,
            List<RequalificationEntry> history) {
        var standing = BesidesFit.standing(row.besides(), history);
        if (standing.isEmpty() && saids.stream().noneMatch(Objects::isNull)) {
            return row.tests();
        }
        var told = new ArrayList<LastTest>();
        for (var test : row.tests()) {
            int number = test.declared();
            boolean uncounted = number > 0 && saids.get(number - 1) == null;
            if (!uncounted || test.done().result() != Result.PASSED) {
                told.add(
                        number <= 0 ? test : test.declaredBy(uncounted ? 0 : present(saids.subList(0, number)).size()));
            }
        }
        told.addAll(standing);
        return told;
    }

    private static List<LastTest> unknown(List<LastTest> given, List<RequalificationEntry> history,
            Problems problems) {
        return given.stream().filter(test -> !isKnown(test, history, problems)).toList();
    }

    /**
     * Whether the register has the test. A bare month of a test whose method is recorded is that test, and what tells no
     * day is that of any day; a test is a fact, so a RIN that comes later does not go into it: the remark TEST_KEPT says
     * so.
     */
    private static boolean isKnown(LastTest given, List<RequalificationEntry> history, Problems problems) {
        var test = given.done();
        for (var entry : history) {
            var recorded = entry.requalification();
            if (recorded.month().equals(test.month()) && recorded.result() == test.result()
                    && (test.method() == null || test.method() == recorded.method())
                    && (given.performedOn() == null || entry.performedOn() == null
                            || given.performedOn().equals(entry.performedOn()))) {
                if (!test.lacksRin() && recorded.lacksRin()) {
                    problems.remark(LedgerColumn.RIN, "TEST_KEPT", String.valueOf(test.rin()), "the register keeps the"
                            + " test of " + recorded.month() + " as recorded, without a RIN");
                }
                return true;
            }
        }
        return false;
    }
}
