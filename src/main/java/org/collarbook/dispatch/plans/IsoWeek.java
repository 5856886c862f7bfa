package org.collarbook.dispatch.plans;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.IsoFields;
import java.util.Comparator;
import java.util.Optional;
import java.util.regex.Pattern;

/** A week by ISO 8601, written as in {@code 2026-W53}: it begins on a Monday and belongs to the year of its Thursday. */
record IsoWeek(int year, int week) implements Comparable<IsoWeek> {

    static final String ACCEPTED = "a week by ISO 8601, such as 2026-W52";

    private static final Pattern WRITTEN = Pattern.compile("[0-9]{4}-W[0-9]{2}");
    private static final Comparator<IsoWeek> IN_TIME = Comparator.comparingInt(IsoWeek::year)
            .thenComparingInt(IsoWeek::week);

    static IsoWeek of(LocalDate day) {
        return new IsoWeek(day.get(IsoFields.WEEK_BASED_YEAR), day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
    }

    /** Empty for what is no week, such as the 53rd of a year that has 52. */
    static Optional<IsoWeek> tryParse(String text) {
        if (!WRITTEN.matcher(text).matches()) {
            return Optional.empty();
        }
        try {
            var week = of(LocalDate.parse(text + "-1", DateTimeFormatter.ISO_WEEK_DATE));
            return week.toString().equals(text) ? Optional.of(week) : Optional.empty();
        } catch (DateTimeException noSuchWeek) {
            return Optional.empty();
        }
    }

    LocalDate monday() {
        return LocalDate.parse(this + "-1", DateTimeFormatter.ISO_WEEK_DATE);
    }

    @Override
    public int compareTo(IsoWeek other) {
        return IN_TIME.compare(this, other);
    }

    @Override
    public String toString() {
        return String.format("%04d-W%02d", year, week);
    }
}
