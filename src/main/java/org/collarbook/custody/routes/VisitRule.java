package org.collarbook.custody.routes;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.EnumSet;
import java.util.Iterator;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.dmfs.rfc5545.DateTime;
import org.dmfs.rfc5545.recur.Freq;
import org.dmfs.rfc5545.recur.InvalidRecurrenceRuleException;
import org.dmfs.rfc5545.recur.RecurrenceRule;
import org.dmfs.rfc5545.recur.RecurrenceRule.Part;
import org.dmfs.rfc5545.recur.RecurrenceRule.RfcMode;
import org.dmfs.rfc5545.recur.RecurrenceRuleIterator;
import org.jspecify.annotations.Nullable;

/**
 * A recurrence rule of whole days (RFC 5545, 3.3.10), such as {@code FREQ=WEEKLY;INTERVAL=2;BYDAY=TH}. Its days are
 * those that match it; the first day counts only if it does, too.
 */
public record VisitRule(String text) {

    public static final String ACCEPTED = "a recurrence rule of days by RFC 5545, such as"
            + " FREQ=WEEKLY;INTERVAL=2;BYDAY=TH: FREQ is DAILY, WEEKLY, MONTHLY or YEARLY, INTERVAL at most 1000,"
            + " UNTIL a day such as 20271231, without BYWEEKNO, BYHOUR and smaller, RSCALE and SKIP;"
            + " a YEARLY rule has BYMONTH beside BYMONTHDAY, and no BYSETPOS";
    public static final int LONGEST = 500;

    /** Days of visits lie between these two: the library's years run over where nothing ends a rule. */
    public static final LocalDate EARLIEST = LocalDate.of(1970, 1, 1);
    public static final LocalDate LATEST = LocalDate.of(2100, 12, 31);

    /** Of longer ones the library loses count (an INTERVAL of 2147483647 days came out as 172, and one of months hung). */
    private static final int LONGEST_INTERVAL = 1000;
    private static final Set<Freq> OF_DAYS = EnumSet.of(Freq.DAILY, Freq.WEEKLY, Freq.MONTHLY, Freq.YEARLY);
    private static final Pattern UNTIL = Pattern.compile("UNTIL=([^;]*)", Pattern.CASE_INSENSITIVE);

    public VisitRule {
        text = text.strip().toUpperCase(Locale.ROOT);
        if (!isRead(text)) {
            throw new IllegalArgumentException("visit rule " + text + ": expected " + ACCEPTED);
        }
    }

    public static boolean isRead(String text) {
        var rule = text.length() > LONGEST ? null : parse(text);
        return rule != null && isOfDays(rule) && hasOneReading(rule)
                && rule.getInterval() <= LONGEST_INTERVAL
                && isDay(UNTIL.matcher(text));
    }

    /** The library takes a 32nd of December, and a moment, at which days cannot end (RFC 5545, 3.3.10). */
    private static boolean isDay(Matcher until) {
        try {
            return !until.find() || LocalDate.parse(until.group(1), DateTimeFormatter.BASIC_ISO_DATE) != null;
        } catch (DateTimeParseException none) {
            return false;
        }
    }

    /**
     * Without parts of hours, or of RFC 7529, or numbers of weeks: the library takes the 53rd of a year that has 52 for
     * one of the next year. The library's {@code Part} and {@code RecurrenceRule} initialise each other,
     * which fails when {@code Part} comes first: no constant here may name it.
     */
    private static boolean isOfDays(RecurrenceRule rule) {
        return OF_DAYS.contains(rule.getFreq())
                && Stream.of(Part.BYHOUR, Part.BYMINUTE, Part.BYSECOND, Part.RSCALE, Part.SKIP,
                        Part.BYWEEKNO)
                        .noneMatch(rule::hasPart);
    }

    /**
     * Days of a month without months in a YEARLY rule are taken for those of every month by some and of the first day's
     * month by others, among them this library; and whether BYSETPOS counts what lies before the first day in its year
     * is open, too. Nobody should wait for a truck on either.
     */
    private static boolean hasOneReading(RecurrenceRule rule) {
        return rule.getFreq() != Freq.YEARLY || !rule.hasPart(Part.BYSETPOS)
                && (!rule.hasPart(Part.BYMONTHDAY) || rule.hasPart(Part.BYMONTH));
    }

    private static @Nullable RecurrenceRule parse(String text) {
        try {
            return new RecurrenceRule(text, RfcMode.RFC5545_STRICT);
        } catch (InvalidRecurrenceRuleException | RuntimeException refused) {
            return null;
        }
    }

    /**
     * Whether it has days from the first one on, all of which are found. The library gives up where there is none for
     * long: on the 30th of February, but also between two Fridays that are a 29th of February, if it looks day by day.
     */
    public boolean comesTrueFrom(LocalDate from) {
        var days = new Days(from, from.minusDays(1));
        boolean any = days.hasNext();
        while (days.hasNext()) {
            days.next();
        }
        return any && !days.gaveUp;
    }

    /** The days of the rule that are later than the day given, the earliest first; none after {@link #LATEST}. */
    Iterator<LocalDate> after(LocalDate from, LocalDate day) {
        return new Days(from, day);
    }

    @Override
    public String toString() {
        return text;
    }

    /** The library throws where it gives up, and on some mixtures of parts: no further day is known then. */
    private final class Days implements Iterator<LocalDate> {

        private @Nullable RecurrenceRuleIterator days;
        private @Nullable LocalDate next;
        private boolean gaveUp;

        private Days(LocalDate from, LocalDate after) {
            var rule = parse(text);
            if (rule == null) {
                throw new IllegalStateException("visit rule " + text + " was read before and is not now");
            }
            try {
                days = after.isBefore(LATEST) ? rule.iterator(allDay(from)) : null;
                if (days != null && !after.isBefore(from)) {
                    days.fastForward(allDay(after.plusDays(1)));
                }
            } catch (RuntimeException never) {
                gaveUp = true;
                days = null;
            }
            next = advance();
        }

        private static DateTime allDay(LocalDate day) {
            return new DateTime(day.getYear(), day.getMonthValue() - 1, day.getDayOfMonth());
        }

        private @Nullable LocalDate advance() {
            try {
                if (days == null || !days.hasNext()) {
                    return null;
                }
                var read = days.nextDateTime();
                var day = LocalDate.of(read.getYear(), read.getMonth() + 1, read.getDayOfMonth());
                return day.isAfter(LATEST) ? null : day;
            } catch (RuntimeException never) {
                gaveUp = true;
                return null;
            }
        }

        @Override
        public boolean hasNext() {
            return next != null;
        }

        @Override
        public LocalDate next() {
            var day = next;
            if (day == null) {
                throw new NoSuchElementException();
            }
            next = advance();
            return day;
        }
    }
}
