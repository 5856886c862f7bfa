package org.collarbook.custody.routes.web;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;

import org.collarbook.custody.Place;
import org.collarbook.custody.Places;
import org.collarbook.custody.routes.Route;
import org.springframework.stereotype.Component;

/** "Today" of a route is the date at its depot. */
@Component
class DepotDays {

    private final Places places;
    private final Clock clock;

    DepotDays(Places places, Clock clock) {
        this.places = places;
        this.clock = clock;
    }

    RouteResponse told(Route route) {
        return RouteResponse.from(route, today(route));
    }

    List<RouteResponse> told(List<Route> routes) {
        var depots = places.sites(routes.stream().map(Route::depot).distinct().toList()).stream()
                .collect(Collectors.toMap(Place::siteId, this::today));
        return routes.stream().map(route -> RouteResponse.from(route, depots.get(route.depot()))).toList();
    }

    LocalDate today(Route route) {
        return today(places.site(route.depot()).orElseThrow());
    }

    LocalDate today(Place site) {
        return LocalDate.now(clock.withZone(site.zone()));
    }
}
