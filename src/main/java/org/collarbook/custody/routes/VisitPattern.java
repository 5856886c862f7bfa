package org.collarbook.custody.routes;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;

import org.jspecify.annotations.Nullable;

/**
 * The days on which a route is driven: those of a rule (RFC 5545, 3.3.10) from a first day on, less the holidays, unless
 * it is driven on them, less the days skipped, with the days added. A day added is driven whatever else it is.
 */
public record VisitPattern(VisitRule rule, LocalDate from, boolean onHolidays, NavigableMap<LocalDate, String> skipped,
        NavigableMap<LocalDate, String> added, SortedMap<LocalDate, String> holidays) {

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
        var visits = new ArrayList<LocalDate>(visitsOfRule(first, last));
        SortedSet<LocalDate> extra = added.navigableKeySet().subSet(first, true, last, true);
        extra.stream().filter(day -> !visits.contains(day)).forEach(visits::add);
        visits.sort(null);
        return List.copyOf(visits);
    }

    private List<LocalDate> visitsOfRule(LocalDate first, LocalDate last) {
        var visits = new ArrayList<LocalDate>();
        for (var days = rule.after(from, first.minusDays(1)); days.hasNext();) {
            var day = days.next();
            if (day.isAfter(last)) {
                break;
            }
            if (whyNot(day) == null) {
                visits.add(day);
            }
        }
        return visits;
    }

    /** The last visit before the day; empty when there is none. */
    public Optional<LocalDate> previous(LocalDate before) {
        var visits = between(from.isBefore(before.minusYears(2)) ? before.minusYears(2) : from, before.minusDays(1));
        return visits.isEmpty() ? Optional.empty() : Optional.of(visits.getLast());
    }

    /** Why a day of the rule is not driven; null when it is. */
    public @Nullable String whyNot(LocalDate day) {
        if (added.containsKey(day)) {
            return null;
        }
        var skip = skipped.get(day);
        return skip != null || onHolidays ? skip : holidays.get(day);
    }
}
