package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeParseException;

import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;

/** Days and months in the middle of a cell, and whether they can be. */
record Days(LocalDate asOf, @Nullable YearMonth manufactured) {

    private static final int EARLIEST = 1900;

    static @Nullable LocalDate day(@Nullable String text) {
        try {
            return text == null ? null : WrittenTime.day(text);
        } catch (DateTimeParseException other) {
            return null;
        }
    }

    static @Nullable YearMonth month(@Nullable String text) {
        try {
            return text == null || text.length() != 7 ? null : YearMonth.parse(text);
        } catch (DateTimeParseException other) {
            return null;
        }
    }

    /** False, and the cell refused, for a day on which nothing can have happened to this container. */
    boolean admit(Cells cells, LedgerColumn column, LocalDate day) {
        // where it stands, the day may have begun that has not in UTC
        boolean ahead = day.isAfter(asOf.plusDays(1));
        boolean before = day.getYear() < EARLIEST || manufactured != null && day.isBefore(manufactured.atDay(1));
        if (ahead || before) {
            cells.problems().refuse(column, ahead ? "IN_THE_FUTURE" : "BEFORE_MANUFACTURE", day.toString(), ahead
                    ? "a day not after " + asOf
                    : "a day not before " + (manufactured == null ? EARLIEST : manufactured));
        }
        return !ahead && !before;
    }
}
