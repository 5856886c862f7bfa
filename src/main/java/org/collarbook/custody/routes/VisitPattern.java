package org.collarbook.custody.routes;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

import org.jspecify.annotations.Nullable;

/**
 * The days on which a route is driven: those of a rule (RFC 5545, 3.3.10) from a first day on, less the holidays, unless
 * it is driven on them, less the days skipped, with the days added. A day added is driven whatever else it is.
 */
public record VisitPattern(VisitRule rule, LocalDate from, boolean onHolidays, NavigableMap<LocalDate, String> skipped,
        NavigableMap<LocalDate, String> added, SortedMap<LocalDate, String> holidays) {

    /** A day of the rule on which the route is not driven; {@code reason}: the holiday's name, or why it is skipped. */
    public record NotDriven(LocalDate day, Why why, String reason) {

        /** Such as "holiday: Thanksgiving". */
        public String words() {
            return why.name().toLowerCase(Locale.ROOT) + ": " + reason;
        }
    }

    public enum Why {
        HOLIDAY,
        SKIPPED
    }

    /** The first visit later than the day; empty when none is known. */
    public Optional<LocalDate> next(LocalDate after) {
        var extra = added.higherKey(after);
        for (var days = rule.after(from, after); days.hasNext();) {
            var day = days.next();
            if (extra != null && extra.isBefore(day)) {
                break;
            }
            if (whyNot(day) == null) {
                return Optional.of(day);
            }
        }
        return Optional.ofNullable(extra);
    }

    public boolean isVisit(LocalDate day) {
        return next(day.minusDays(1)).filter(day::equals).isPresent();
    }

    /** Both ends included. */
    public List<LocalDate> between(LocalDate first, LocalDate last) {
        if (first.isAfter(last)) {
            return List.of();
        }
        var visits = new TreeSet<>(added.navigableKeySet().subSet(first, true, last, true));
        ofRule(first, last).stream().filter(day -> whyNot(day) == null).forEach(visits::add);
        return List.copyOf(visits);
    }

    /** The days of the rule that are not driven; both ends included. */
    public List<NotDriven> notDriven(LocalDate first, LocalDate last) {
        return ofRule(first, last).stream().map(this::whyNot).filter(why -> why != null).toList();
    }

    private List<LocalDate> ofRule(LocalDate first, LocalDate last) {
        var found = new ArrayList<LocalDate>();
        for (var days = rule.after(from, first.minusDays(1)); days.hasNext();) {
            var day = days.next();
            if (day.isAfter(last)) {
                break;
            }
            found.add(day);
        }
        return found;
    }

    /** The last visit before the day; empty when there is none. */
    public Optional<LocalDate> previous(LocalDate before) {
        var earliest = added.isEmpty() || from.isBefore(added.firstKey()) ? from : added.firstKey();
        // most rules came true within the year, and rules only walk forwards
        long back = 1;
        var latest = before.isAfter(VisitRule.LATEST) ? VisitRule.LATEST : before.minusDays(1);
        for (var last = latest; !last.isBefore(earliest); back *= 2) {
            var first = last.minusYears(back);
            var visits = between(first, last);
            if (!visits.isEmpty()) {
                return Optional.of(visits.getLast());
            }
            last = first.minusDays(1);
        }
        return Optional.empty();
    }

    /** Why a day of the rule is not driven; null when it is. */
    private @Nullable NotDriven whyNot(LocalDate day) {
        if (added.containsKey(day)) {
            return null;
        }
        var skip = skipped.get(day);
        if (skip != null) {
            return new NotDriven(day, Why.SKIPPED, skip);
        }
        var holiday = onHolidays ? null : holidays.get(day);
        return holiday == null ? null : new NotDriven(day, Why.HOLIDAY, holiday);
    }

    /** As if nothing had been said about the day by itself. */
    VisitPattern without(LocalDate day) {
        return new VisitPattern(rule, from, onHolidays, less(skipped, day), less(added, day), holidays);
    }

    private static NavigableMap<LocalDate, String> less(NavigableMap<LocalDate, String> days, LocalDate day) {
        var others = new TreeMap<>(days);
        others.remove(day);
        return others;
    }
}
