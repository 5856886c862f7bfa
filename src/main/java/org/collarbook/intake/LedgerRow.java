package org.collarbook.intake;

import org.jspecify.annotations.Nullable;

/**
 * One row of the file: the line it starts on, its cells by column as the template has them (blank is null), and what was
 * wrong with a cell already.
 */
record LedgerRow(long line, int cellsFound, int cellsExpected, @Nullable String[] cells, Problems problems) {

    @Nullable
    String get(LedgerColumn column) {
        return cells[column.ordinal()];
    }

    boolean isComplete() {
        return cellsFound == cellsExpected;
    }
}
