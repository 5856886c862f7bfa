package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.custody.routes.Route;
import org.collarbook.custody.routes.VisitPattern;
import org.collarbook.platform.Problem;
import org.springframework.http.HttpStatus;

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
        var previous = nearest(routes, visits -> visits.previous(day)).max(Comparator.naturalOrder());
        var next = nearest(routes, visits -> visits.next(day)).min(Comparator.naturalOrder());
        var why = routes.stream().flatMap(route -> why(route, day)).distinct()
                .collect(Collectors.joining("; "));
        var problem = Problem.of(HttpStatus.UNPROCESSABLE_CONTENT, "NOT_A_VISIT", "No visit on " + day
                + (why.isEmpty() ? "" : " (" + why + ")") + "; the nearest before it: " + told(previous)
                + ", after it: " + told(next) + ".");
        problem = why.isEmpty() ? problem : problem.with("why", why);
        problem = previous.isEmpty() ? problem : problem.with("previous", previous.get());
        return next.isEmpty() ? problem : problem.with("next", next.get());
    }

    private static Stream<LocalDate> nearest(List<Route> routes,
            Function<VisitPattern, Optional<LocalDate>> visit) {
        return routes.stream().map(Route::visits).flatMap(visits -> visit.apply(visits).stream());
    }

    private static Stream<String> why(Route route, LocalDate day) {
        return route.visits().notDriven(day, day).stream()
                .map(not -> route.code() + " " + not.why().name().toLowerCase(Locale.ROOT) + ": " + not.reason());
    }

    private static String told(Optional<LocalDate> day) {
        return day.map(LocalDate::toString).orElse("none");
    }
}
