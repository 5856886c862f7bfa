package org.collarbook.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** All that is wrong or doubtful with one row, gathered while it is read. */
final class Problems {

    private static final String SEVERAL_READINGS = "AMBIGUOUS_";

    private final List<LedgerProblem> all = new ArrayList<>(1);
    private final Map<LedgerColumn, String> alsoAccepted;
    private boolean refused;
    private boolean doubted;

    /** {@code alsoAccepted} is what else may stand in a column because a map says so. */
    Problems(Map<LedgerColumn, String> alsoAccepted) {
        this.alsoAccepted = alsoAccepted;
    }

    /** What was refused counts as blank, but is not missing. A stamp with several readings is no wrong one: a doubt. */
    void refuse(LedgerColumn column, String code, @Nullable String found, String accepted) {
        if (code.startsWith(SEVERAL_READINGS)) {
            doubt(column, code, found, accepted);
            return;
        }
        if (code.equals("MISSING") && found == null && isRefused(column)) {
            return;
        }
        var also = code.startsWith("UNKNOWN_") || code.startsWith("INVALID_") ? alsoAccepted.get(column) : null;
        all.add(new LedgerProblem(column.word(), true, code, Shown.of(found),
                Shown.plain(also == null ? accepted : accepted + also)));
        refused = true;
    }

    /** The row could mean more than one thing, so it is not taken. */
    void doubt(LedgerColumn column, String code, @Nullable String found, String accepted) {
        all.add(new LedgerProblem(column.word(), true, code, Shown.of(found), Shown.plain(accepted)));
        doubted = true;
    }

    private boolean isRefused(LedgerColumn column) {
        return all.stream().anyMatch(problem -> problem.refuses() && problem.column().equals(column.word()));
    }

    /** Said of a row that is taken all the same. */
    void remark(LedgerColumn column, String code, @Nullable String found, String accepted) {
        all.add(new LedgerProblem(column.word(), false, code, Shown.of(found), Shown.plain(accepted)));
    }

    boolean areKeepingOut() {
        return refused || doubted;
    }

    /** Of a row that is kept out: what cannot be accepted goes before what is not certain. */
    Line.Outcome outcome() {
        return refused ? Line.Outcome.REFUSED : Line.Outcome.AMBIGUOUS;
    }

    List<LedgerProblem> list() {
        return all;
    }
}
