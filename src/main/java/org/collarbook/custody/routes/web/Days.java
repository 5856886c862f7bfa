package org.collarbook.custody.routes.web;

import java.time.LocalDate;

import org.collarbook.custody.routes.VisitRule;
import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

/** The days asked about, both ends included. */
record Days(LocalDate from, LocalDate to) {

    private static final int MOST_YEARS = 3;

    /** From {@code today} on where no first day is given, and for so many days where no last one is. */
    static Days read(@Nullable LocalDate from, @Nullable LocalDate to, LocalDate today, int length) {
        var inputs = new Inputs();
        var first = from == null ? today : from;
        var last = to == null ? first.plusDays(length) : to;
        if (isWithin("from", first, inputs) && to != null && isWithin("to", last, inputs)
                && (last.isBefore(first) || last.isAfter(first.plusYears(MOST_YEARS)))) {
            inputs.refuse("to", "OUT_OF_RANGE", last.toString(), "a day from " + first + " to "
                    + first.plusYears(MOST_YEARS) + ", " + MOST_YEARS + " years on");
        }
        inputs.done();
        return new Days(first, last);
    }

    /** Notes a day that is too far away. */
    static boolean isWithin(String pointer, LocalDate day, Inputs inputs) {
        boolean within = !day.isBefore(VisitRule.EARLIEST) && !day.isAfter(VisitRule.LATEST);
        if (!within) {
            inputs.refuse(pointer, "OUT_OF_RANGE", day.toString(),
                    "a day from " + VisitRule.EARLIEST + " to " + VisitRule.LATEST);
        }
        return within;
    }
}
