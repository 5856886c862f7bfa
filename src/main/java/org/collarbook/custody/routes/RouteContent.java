package org.collarbook.custody.routes;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A route as it is to stand; its days are those of the rule from a first day on. */
public record RouteContent(String code, String name, UUID depot, @Nullable UUID vehicle, VisitRule rule,
        LocalDate from, boolean onHolidays, List<UUID> stops) {

    public static final int MOST_STOPS = 500;

    public RouteContent {
        stops = List.copyOf(stops);
        if (stops.size() > MOST_STOPS || new HashSet<>(stops).size() < stops.size()) {
            throw new IllegalArgumentException("route " + code + ": expected at most " + MOST_STOPS
                    + " stops, none of them twice");
        }
        if (from.isBefore(VisitRule.EARLIEST) || from.isAfter(VisitRule.LATEST)) {
            throw new IllegalArgumentException("route " + code + ": expected a first day from " + VisitRule.EARLIEST
                    + " to " + VisitRule.LATEST);
        }
    }
}
