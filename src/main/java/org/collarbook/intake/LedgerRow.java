package org.collarbook.intake;

import org.jspecify.annotations.Nullable;

/** One row of the file: the line it starts on, and its cells by column; blank is null. */
record LedgerRow(long line, int cellsFound, int cellsExpected, @Nullable String[] cells) {

    @Nullable
    String get(LedgerColumn column) {
        return cells[column.ordinal()];
    }

    boolean isComplete() {
        return cellsFound == cellsExpected;
    }
}
