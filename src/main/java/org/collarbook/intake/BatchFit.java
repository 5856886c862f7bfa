package org.collarbook.intake;

import java.util.List;
import java.util.Set;

import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.NewContainer;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.regulation.Requalification;
import org.jspecify.annotations.Nullable;

/** Fits the rows of one batch, in their order, to what the register knows. */
record BatchFit(Known known, BatchPlaces places, @Nullable Declaration said) {

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
        var write = before == null ? fresh(row) : changed(before, row, problems);
        line.became(before == null
                ? Line.Outcome.NEW
                : write.isEmpty() ? Line.Outcome.UNCHANGED : Line.Outcome.CHANGED);
        return write;
    }

    private Write fresh(LedgerEntry row) {
        var completed = said == null ? null : row.particulars().completedBy(said);
        var content = completed == null || said == null
                ? NewContainer.of(row.marks(), row.particulars(), row.tag())
                : new NewContainer(row.marks(), completed.particulars(), row.tag(), said.id(), completed.declared());
        return new Write(null, content, true, row.site() == null ? null : row.site().code(), row.lastTests(),
                row.filledOn());
    }

    private Write changed(RegisteredContainer before, LedgerEntry row, Problems problems) {
        var merge = new Merge(before, row, said);
        var history = known.history(before);
        var after = merge.after(history, problems);
        var day = row.filledOn();
        boolean filledAnew = day != null
                && !known.fills().getOrDefault(before.id(), Set.of()).contains(day);
        boolean moved = row.site() != null && !row.site().code().equals(known.siteCodes().get(before.id()));
        return new Write(before, after, merge.changes(after), moved ? row.site().code() : null,
                unknown(row.lastTests(), history, problems), filledAnew ? day : null);
    }

    private static List<LastTest> unknown(List<LastTest> given, List<Requalification> history, Problems problems) {
        return given.stream().filter(test -> !isKnown(test.done(), history, problems)).toList();
    }

    /**
     * Whether the register has the test. A bare month of a test whose method is recorded is that test; a test is a fact,
     * so a RIN that comes later does not go into it: the remark TEST_KEPT says so.
     */
    private static boolean isKnown(Requalification test, List<Requalification> history, Problems problems) {
        for (var recorded : history) {
            if (recorded.month().equals(test.month())
                    && (test.method() == null || test.method() == recorded.method())) {
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
