package org.collarbook.custody.routes;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Set;

import org.dmfs.rfc5545.DateTime;
import org.dmfs.rfc5545.recur.Freq;
import org.dmfs.rfc5545.recur.InvalidRecurrenceRuleException;
import org.dmfs.rfc5545.recur.RecurrenceRule;
import org.dmfs.rfc5545.recur.RecurrenceRule.RfcMode;
import org.dmfs.rfc5545.recur.RecurrenceRuleIterator;
import org.jspecify.annotations.Nullable;

/** A recurrence rule of whole days (RFC 5545, 3.3.10), such as {@code FREQ=WEEKLY;INTERVAL=2;BYDAY=TH}. */
public record VisitRule(String text) {

    public static final String ACCEPTED = "a recurrence rule of days by RFC 5545, such as"
            + " FREQ=WEEKLY;INTERVAL=2;BYDAY=TH (FREQ is DAILY, WEEKLY, MONTHLY or YEARLY)";

    private static final Set<Freq> OF_DAYS = EnumSet.of(Freq.DAILY, Freq.WEEKLY, Freq.MONTHLY, Freq.YEARLY);

    public VisitRule {
        var rule = read(text);
        if (rule == null || !OF_DAYS.contains(rule.getFreq()) || isOfHours(rule)) {
            throw new IllegalArgumentException("visit rule " + text + ": expected " + ACCEPTED);
        }
    }

    /** The library's {@code Part} and {@code RecurrenceRule} initialise each other: no constant here may name a part. */
    private static boolean isOfHours(RecurrenceRule rule) {
        return rule.hasPart(RecurrenceRule.Part.BYHOUR) || rule.hasPart(RecurrenceRule.Part.BYMINUTE)
                || rule.hasPart(RecurrenceRule.Part.BYSECOND);
    }

    private static @Nullable RecurrenceRule read(String text) {
        try {
            return new RecurrenceRule(text, RfcMode.RFC5545_STRICT);
        } catch (InvalidRecurrenceRuleException refused) {
            return null;
        }
    }

    /** The days of the rule that are later than the day given, the earliest first. */
    Iterator<LocalDate> after(LocalDate from, LocalDate day) {
        var rule = read(text);
        if (rule == null) {
            throw new IllegalStateException("visit rule " + text + " was read before and is not now");
        }
        var days = rule.iterator(allDay(from));
        if (!day.isBefore(from)) {
            days.fastForward(allDay(day.plusDays(1)));
        }
        return new Days(days);
    }

    private static DateTime allDay(LocalDate day) {
        return new DateTime(day.getYear(), day.getMonthValue() - 1, day.getDayOfMonth());
    }

    @Override
    public String toString() {
        return text;
    }

    private record Days(RecurrenceRuleIterator days) implements Iterator<LocalDate> {

        /** A rule that never comes true, such as the 30th of February, is found out by the library after many tries. */
        @Override
        public boolean hasNext() {
            try {
                return days.hasNext();
            } catch (IllegalArgumentException | IllegalStateException never) {
                return false;
            }
        }

        @Override
        public LocalDate next() {
            if (!hasNext()) {
                throw new NoSuchElementException();
            }
            var next = days.nextDateTime();
            return LocalDate.of(next.getYear(), next.getMonth() + 1, next.getDayOfMonth());
        }
    }
}
