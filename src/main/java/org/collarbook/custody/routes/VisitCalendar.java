package org.collarbook.custody.routes;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/** When somebody is next at a site, over all the routes that call there. */
public final class VisitCalendar {

    /** A route's vehicle at its sites on a day. */
    public record Visit(Route route, LocalDate day) {}

    private record Asked(UUID route, LocalDate after) {}

    /** By code, as the lists below. */
    private final Map<UUID, Route> routes = new LinkedHashMap<>();
    private final Map<UUID, List<Route>> callingAt = new HashMap<>();
    private final Map<Asked, Optional<LocalDate>> known = new HashMap<>();

    VisitCalendar(List<Route> all) {
        for (var route : all.stream().sorted(Comparator.comparing(Route::code)).toList()) {
            routes.put(route.id(), route);
            route.stops().forEach(site -> callingAt.computeIfAbsent(site, none -> new ArrayList<>()).add(route));
        }
    }

    public Optional<Route> route(UUID id) {
        return Optional.ofNullable(routes.get(id));
    }

    /** By code. */
    public List<Route> routes() {
        return List.copyOf(routes.values());
    }

    /** The routes that call at a site, by code. */
    public List<Route> callingAt(UUID site) {
        return List.copyOf(callingAt.getOrDefault(site, List.of()));
    }

    /** The first visit of the site later than the day, by whichever route comes first; empty when none is known. */
    public Optional<Visit> next(UUID site, LocalDate after) {
        return callingAt(site).stream().map(route -> next(route, after).map(day -> new Visit(route, day)))
                .flatMap(Optional::stream).min(Comparator.comparing(Visit::day));
    }

    private Optional<LocalDate> next(Route route, LocalDate after) {
        return Objects.requireNonNull(
                known.computeIfAbsent(new Asked(route.id(), after), asked -> route.visits().next(after)));
    }
}
