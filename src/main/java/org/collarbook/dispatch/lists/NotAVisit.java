package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.custody.routes.NearestVisits;
import org.collarbook.custody.routes.Route;
import org.collarbook.platform.Problem;

/** A day was asked about on which none of the routes is driven: the answer names the nearest ones, and why this is none. */
final class NotAVisit {

    private NotAVisit() {}

    /** The day, when one of the routes is driven on it. */
    static LocalDate refuse(List<Route> routes, LocalDate day) {
        if (routes.stream().noneMatch(route -> route.visits().isVisit(day))) {
            throw of(routes, day).asException();
        }
        return day;
    }

    static Problem of(List<Route> routes, LocalDate day) {
        var why = routes.stream().flatMap(route -> why(route, day)).distinct().collect(Collectors.joining("; "));
        return NearestVisits.to(day, routes.stream().map(Route::visits).toList()).notAVisit(day, why);
    }

    private static Stream<String> why(Route route, LocalDate day) {
        return route.visits().notDriven(day, day).stream()
                .map(not -> route.code() + " " + not.words());
    }
}
