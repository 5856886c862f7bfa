package org.collarbook.dispatch.lists;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * How long what stays at a stop must last. It comes back when its last day lies before the day; without a day everything
 * comes back that has one.
 */
sealed interface Until {

    /** The site's visit after the one that is asked about. */
    record NextVisit(LocalDate day) implements Until {}

    /** A day that was asked about. */
    record Asked(LocalDate day) implements Until {}

    record NoLaterVisit() implements Until {}

    record NoVisitKnown() implements Until {}

    default @Nullable LocalDate dayOrNull() {
        return switch (this) {
            case NextVisit(var day) -> day;
            case Asked(var day) -> day;
            case NoLaterVisit _,NoVisitKnown _ -> null;
        };
    }

    /** The first of the latest due month that ends before the day: of the month before the day's own, whatever its day. */
    default @Nullable LocalDate lastDue() {
        var day = dayOrNull();
        return day == null ? null : day.withDayOfMonth(1).minusMonths(1);
    }
}
