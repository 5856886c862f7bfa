package org.collarbook.custody.web;

import java.time.YearMonth;
import java.time.format.DateTimeParseException;

import org.collarbook.platform.Inputs;
import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;

/** A month in a request, in which something has happened already. */
final class Months {

    private static final YearMonth EARLIEST = YearMonth.of(1900, 1);

    private Months() {}

    static @Nullable YearMonth read(String pointer, @Nullable String given, YearMonth thisMonth, Inputs inputs) {
        if (given == null || given.isBlank()) {
            return null;
        }
        try {
            var month = WrittenTime.month(given.strip());
            if (month.isAfter(thisMonth)) {
                inputs.refuse(pointer, "IN_THE_FUTURE", given, "a month not after " + thisMonth);
                return null;
            }
            if (!month.isBefore(EARLIEST)) {
                return month;
            }
        } catch (DateTimeParseException unreadable) {
            // told below, with what is accepted
        }
        inputs.refuse(pointer, "INVALID_MONTH", given, "a month such as 2016-05, from " + EARLIEST + " on");
        return null;
    }
}
