package org.collarbook.holds.web;

import java.time.YearMonth;
import java.time.format.DateTimeParseException;

import org.collarbook.platform.Inputs;
import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;

/** A month of manufacture in a request. */
final class Months {

    private static final YearMonth EARLIEST = YearMonth.of(1900, 1);
    private static final YearMonth LATEST = YearMonth.of(2199, 12);

    private Months() {}

    static @Nullable YearMonth read(String pointer, @Nullable String given, Inputs inputs) {
        if (given == null || given.isBlank()) {
            return null;
        }
        try {
            var month = WrittenTime.month(given.strip());
            if (!month.isBefore(EARLIEST) && !month.isAfter(LATEST)) {
                return month;
            }
        } catch (DateTimeParseException unreadable) {
            // told below, with what is accepted
        }
        inputs.refuse(pointer, "INVALID_MONTH", given, "a month such as 2016-05, from " + EARLIEST + " on");
        return null;
    }
}
