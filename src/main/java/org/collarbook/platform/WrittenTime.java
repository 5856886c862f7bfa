package org.collarbook.platform;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;

/**
 * Days, months and moments as a request writes them: the years have four digits, from 0001 to 9999. Java reads nine
 * digits and a sign, which neither the database nor a sum of years holds.
 */
public final class WrittenTime {

    private static final int LATEST = 9999;

    private WrittenTime() {}

    public static LocalDate day(String text) {
        return within(LocalDate.parse(text));
    }

    public static YearMonth month(String text) {
        return within(YearMonth.parse(text));
    }

    public static Instant moment(String text) {
        var moment = OffsetDateTime.parse(text).toInstant();
        within(moment.atOffset(ZoneOffset.UTC));
        return moment;
    }

    private static <T extends TemporalAccessor> T within(T read) {
        int year = read.get(ChronoField.YEAR);
        if (year < 1 || year > LATEST) {
            throw new DateTimeParseException("the year has other than four digits", read.toString(), 0);
        }
        return read;
    }
}
