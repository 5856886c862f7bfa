package org.collarbook.intake.files;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A cell that shows a date. The day of the cell is written YYYY-MM-DD, and a month that is shown without its day as
 * May-2004. Without its year, such as 4-May, or without its month, such as 2004, it is written as seen: that is what a
 * spreadsheet makes of a mark "5-04" or of a serial number, and no reader takes it for a date.
 */
record DateShape(boolean year, boolean month, boolean day, boolean time) implements CellFormat {

    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM-uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d-MMM", Locale.ENGLISH);
    private static final Pattern MINUTES = Pattern.compile("h+[^a-z]*m{1,2}(?!m)|(?<!m)m{1,2}[^a-z]*s+");
    private static final int SECONDS = 86_400;
    /** The last day that a spreadsheet shows, 9999-12-31. */
    private static final int LAST = 2_958_465;
    private static final int DAYS_TO_1904 = 1_462;
    /** 29 February 1900, which the 1900 date system counts though it never was (ECMA-376 part 1, 18.17.4.1). */
    private static final int NEVER = 60;
    private static final String NO_DATE = "#####";

    static DateShape of(String letters) {
        var small = letters.toLowerCase(Locale.ROOT);
        boolean year = small.indexOf('y') >= 0;
        boolean day = small.indexOf('d') >= 0;
        boolean time = small.indexOf('h') >= 0 || small.indexOf('s') >= 0;
        // beside hours or seconds it is the minutes
        boolean month = MINUTES.matcher(small).replaceAll("").indexOf('m') >= 0;
        return new DateShape(year, month, day, time);
    }

    @Override
    public String shown(BigDecimal number, boolean countsFrom1904) {
        var whole = number.setScale(0, RoundingMode.FLOOR);
        int serial = whole.intValue() + (countsFrom1904 ? DAYS_TO_1904 : 0);
        long seconds = number.subtract(whole).multiply(BigDecimal.valueOf(SECONDS)).setScale(0, RoundingMode.HALF_EVEN)
                .longValue();
        if (seconds == SECONDS) {
            serial++;
            seconds = 0;
        }
        if (serial < 0 || serial > LAST || serial == 0 && isDate()) {
            return NO_DATE;
        }
        if (!isDate()) {
            return LocalTime.ofSecondOfDay(seconds).toString();
        }
        if (serial == NEVER && !countsFrom1904) {
            return "1900-02-29";
        }
        var date = LocalDate.of(1899, 12, serial < NEVER ? 31 : 30).plusDays(serial);
        return time && seconds != 0 ? day(date) + " " + LocalTime.ofSecondOfDay(seconds) : day(date);
    }

    private boolean isDate() {
        return year || month || day || !time;
    }

    private String day(LocalDate date) {
        if (year && !month) {
            return day ? date.getYear() + " " + date.getDayOfMonth() : String.valueOf(date.getYear());
        }
        if (!year) {
            return date.format(DAY);
        }
        return day ? date.toString() : date.format(MONTH);
    }
}
