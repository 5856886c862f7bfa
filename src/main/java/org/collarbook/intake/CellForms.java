package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.regex.Pattern;

import org.jspecify.annotations.Nullable;

/**
 * What spreadsheets leave in a cell, read as what it is or refused: errors, numbers that lost their digits, and dates. A
 * day under a column of months is its month.
 */
final class CellForms {

    /** Those that spreadsheets show, and a formula that was never computed. */
    private static final Pattern ERROR = Pattern.compile("#(NULL!|DIV/0!|VALUE!|REF!|NAME\\?|NUM!|N/A|GETTING_DATA"
            + "|SPILL!|CALC!|FIELD!|BLOCKED!|CONNECT!|UNKNOWN!|BUSY!|NOT-COMPUTED!)|#{3,}");
    private static final Pattern POWER = Pattern.compile("[-+]?\\d([.,]\\d+)?E\\+\\d{1,3}");
    private static final String MONTH_NAME = "(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)";
    private static final Pattern DATE = Pattern.compile("\\d{4}-\\d{2}-\\d{2}( \\d{2}:\\d{2}(:\\d{2})?)?|\\d{1,2}-"
            + MONTH_NAME + "|" + MONTH_NAME + "-(\\d{2}|\\d{4})");
    private static final Pattern NAMED_MONTH = Pattern.compile(MONTH_NAME + "-\\d{4}");
    private static final DateTimeFormatter NAMED = DateTimeFormatter.ofPattern("MMM-uuuu", Locale.ENGLISH);

    private final @Nullable DayFormat dayFormat;

    CellForms(@Nullable DayFormat dayFormat) {
        this.dayFormat = dayFormat;
    }

    /** The cell in the form of its column; null where it was refused. */
    @Nullable
    String read(LedgerColumn column, String cell, Problems problems) {
        if (cell.charAt(0) == '#' && ERROR.matcher(cell).matches()) {
            problems.refuse(column, "ERROR_VALUE", cell, "the value, not the error of a spreadsheet; blank for not"
                    + " known");
            return null;
        }
        if (cell.contains("E+") && POWER.matcher(cell).matches()) {
            problems.refuse(column, "DIGITS_LOST", cell, "the whole number, kept as text: a spreadsheet that shows a"
                    + " power of ten drops digits, and keeps no more than 15");
            return null;
        }
        if (ColumnSorts.SIGNS.contains(column) && DATE.matcher(cell).matches()) {
            problems.refuse(column, "DATE_FOR_A_SIGN", cell, "what is stamped or written, kept as text: a spreadsheet"
                    + " makes a date of signs such as 5-04");
            return null;
        }
        if (ColumnSorts.DAYS.contains(column)) {
            var day = day(cell);
            return day == null ? cell : day.toString();
        }
        return ColumnSorts.MONTHS.contains(column) ? month(cell) : cell;
    }

    private String month(String cell) {
        if (NAMED_MONTH.matcher(cell).matches()) {
            return YearMonth.parse(cell, NAMED).toString();
        }
        var day = day(cell);
        return day == null ? cell : YearMonth.from(day).toString();
    }

    private @Nullable LocalDate day(String cell) {
        try {
            return LocalDate.parse(cell);
        } catch (DateTimeParseException another) {
            return dayFormat == null ? null : dayFormat.parse(cell);
        }
    }
}
