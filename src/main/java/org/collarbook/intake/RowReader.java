package org.collarbook.intake;

import java.util.Map;

import org.apache.commons.csv.CSVRecord;
import org.collarbook.platform.SpreadsheetText;
import org.jspecify.annotations.Nullable;

/** Turns the cells of a row into those of the template: by the map's words, in the forms that the columns have. */
final class RowReader {

    private static final int COLUMNS = LedgerColumn.values().length;

    private final Header header;
    private final @Nullable ColumnMap map;
    private final Map<LedgerColumn, String> alsoAccepted;
    private final @Nullable String capacityUnit;
    private final @Nullable String tareUnit;
    private final CellForms forms;

    RowReader(Header header, @Nullable ColumnMap map) {
        this.header = header;
        this.map = map;
        alsoAccepted = map == null ? Map.of() : map.alsoAccepted();
        capacityUnit = header.unit(LedgerColumn.WATER_CAPACITY);
        tareUnit = header.unit(LedgerColumn.TARE);
        forms = new CellForms(map == null ? null : map.dayFormat());
    }

    LedgerRow row(long line, CSVRecord record) {
        var cells = new @Nullable String[COLUMNS];
        var problems = new Problems(alsoAccepted);
        var row = new LedgerRow(line, record.size(), header.cells().size(), cells, problems);
        if (!row.isComplete()) {
            return row;
        }
        for (int i = 0; i < record.size(); i++) {
            var mapped = header.cells().get(i);
            var cell = SpreadsheetText.unguarded(record.get(i)).strip();
            if (mapped != null && !cell.isEmpty()) {
                var column = mapped.column();
                cells[column.ordinal()] = forms.read(column, word(column, cell), problems);
            } else if (header.blank().get(i) && !cell.isEmpty()) {
                problems.refuse(LedgerColumn.SPECIFICATION, "CELL_WITHOUT_HEADING", cell, "a heading over column "
                        + (i + 1));
            }
        }
        if (map != null) {
            map.fixed().forEach((column, value) -> cells[column.ordinal()] = value);
        }
        Units.CAPACITY.join(cells, capacityUnit, problems);
        Units.TARE.join(cells, tareUnit, problems);
        return row;
    }

    private String word(LedgerColumn column, String cell) {
        return map == null ? cell : map.word(column, cell);
    }
}
