package org.collarbook.intake;

import java.util.ArrayList;
import java.util.List;

import org.jspecify.annotations.Nullable;

/** All that is wrong or doubtful with one row, gathered while it is read. */
final class Problems {

    private final List<LedgerProblem> all = new ArrayList<>(1);
    private boolean refused;

    void refuse(LedgerColumn column, String code, @Nullable String found, String accepted) {
        all.add(new LedgerProblem(column.word(), true, code, Shown.of(found), Shown.plain(accepted)));
        refused = true;
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
