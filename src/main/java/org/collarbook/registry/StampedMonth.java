package org.collarbook.registry;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/**
 * What a stamped month of the original test says. Month before year, as 49 CFR 178.35(f) has it ("5-95"), so "1202" is
 * December 2002. A UN mark may have the year first, so there both orders are tried.
 */
public sealed interface StampedMonth {

    record Read(YearMonth month) implements StampedMonth {}

    /** More than one reading is plausible: enter four digits of the year, as in {@code 2012-11}. */
    record Ambiguous(List<YearMonth> months) implements StampedMonth {}

    record Unreadable(int index, String found, String expected, boolean future) implements StampedMonth {}

    static StampedMonth read(String text, LocalDate asOf, @Nullable Specification specification) {
        return new StampedMonthReader(text, asOf, specification).read();
    }

    /** In the form that is always read back as the same month. */
    static String print(YearMonth month) {
        return month.toString();
    }
}
