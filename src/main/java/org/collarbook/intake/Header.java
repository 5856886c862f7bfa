package org.collarbook.intake;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;

import org.apache.commons.csv.CSVRecord;
import org.collarbook.intake.ColumnMap.Mapped;
import org.collarbook.platform.FieldError;
import org.jspecify.annotations.Nullable;

/** What stands in each cell of a row. Null is nothing that is read: what a map ignores, and where the heading is blank. */
record Header(List<@Nullable Mapped> cells, List<Boolean> blank) {

    private static final int MOST_ERRORS = 50;

    static Header read(long line, CSVRecord header, KnownHeadings known) {
        var cells = new ArrayList<@Nullable Mapped>();
        var blank = new ArrayList<Boolean>();
        var errors = new ArrayList<FieldError>();
        var seen = EnumSet.noneOf(LedgerColumn.class);
        int named = named(header);
        for (int i = 0; i < header.size(); i++) {
            var heading = header.get(i);
            boolean isIgnored = i >= named || known.isIgnored(heading) || LinesToMend.isAdded(heading);
            var mapped = isIgnored ? null : known.of(heading);
            if (!isIgnored) {
                check(heading, i, mapped, known, seen, errors);
            }
            cells.add(mapped);
            blank.add(i >= named);
        }
        for (var column : LedgerColumn.values()) {
            if (column.required() && !seen.contains(column) && !known.isFixed(column)) {
                errors.add(FieldError.missing("/ledger", "the column " + column.word()));
            }
        }
        if (!errors.isEmpty()) {
            throw LedgerFault.header(line, errors.subList(0, Math.min(errors.size(), MOST_ERRORS)), known.words());
        }
        return new Header(cells, blank);
    }

    /** A spreadsheet may leave delimiters behind the last heading: nothing may stand in those cells. */
    private static int named(CSVRecord header) {
        int named = header.size();
        while (named > 0 && header.get(named - 1).isBlank()) {
            named--;
        }
        return named;
    }

    private static void check(String heading, int at, @Nullable Mapped mapped, KnownHeadings known,
            EnumSet<LedgerColumn> seen, List<FieldError> errors) {
        if (heading.isBlank()) {
            errors.add(new FieldError("/ledger", "BLANK_HEADING", "column " + (at + 1),
                    "a heading over each column, " + accepted(known)));
        } else if (mapped == null) {
            errors.add(new FieldError("/ledger", "UNKNOWN_COLUMN", Shown.of(heading), accepted(known)));
        } else if (known.isFixed(mapped.column())) {
            errors.add(new FieldError("/ledger", "DUPLICATE_COLUMN", Shown.of(heading), "no column "
                    + mapped.column().word() + ", whose value the map tells for all rows"));
        } else if (!seen.add(mapped.column())) {
            errors.add(new FieldError("/ledger", "DUPLICATE_COLUMN", mapped.column().word(), "each column once"));
        }
    }

    private static String accepted(KnownHeadings known) {
        return "one of " + String.join(", ", known.words());
    }

    /** The unit that the map tells of the column. */
    @Nullable
    String unit(LedgerColumn column) {
        return cells.stream().filter(Objects::nonNull).filter(mapped -> mapped.column() == column)
                .map(Mapped::unit).filter(Objects::nonNull).findFirst().orElse(null);
    }
}
