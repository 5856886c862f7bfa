package org.collarbook.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** All that is wrong or doubtful with one row, gathered while it is read. */
final class Problems {

    private final List<LedgerProblem> all = new ArrayList<>(1);
    private final Map<LedgerColumn, String> alsoAccepted;
    private boolean refused;

    /** {@code alsoAccepted} is what else may stand in a column because a map says so. */
    Problems(Map<LedgerColumn, String> alsoAccepted) {
        this.alsoAccepted = alsoAccepted;
    }

    /** What was refused counts as blank, but is not missing. */
    void refuse(LedgerColumn column, String code, @Nullable String found, String accepted) {
        if (code.equals("MISSING") && found == null && isRefused(column)) {
            return;
        }
        var also = code.startsWith("UNKNOWN_") || code.startsWith("INVALID_") ? alsoAccepted.get(column) : null;
        all.add(new LedgerProblem(column.word(), true, code, Shown.of(found),
                Shown.plain(also == null ? accepted : accepted + also)));
        refused = true;
    }

    private boolean isRefused(LedgerColumn column) {
        return all.stream().anyMatch(problem -> problem.refuses() && problem.column().equals(column.word()));
    }

    /** Said of a row that is taken all the same. */
    void remark(LedgerColumn column, String code, @Nullable String found, String accepted) {
        all.add(new LedgerProblem(column.word(), false, code, Shown.of(found), Shown.plain(accepted)));
    }

    boolean areRefusing() {
        return refused;
    }

    List<LedgerProblem> list() {
        return all;
    }
}
