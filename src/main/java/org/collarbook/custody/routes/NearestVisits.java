package org.collarbook.custody.routes;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

import org.collarbook.platform.Problem;
import org.springframework.http.HttpStatus;

/** The visits nearest to a day, for an answer that refuses it. */
public record NearestVisits(Optional<LocalDate> previous, Optional<LocalDate> next) {

    public static NearestVisits to(LocalDate day, Collection<VisitPattern> routes) {
        return new NearestVisits(each(routes, visits -> visits.previous(day)).max(Comparator.naturalOrder()),
                each(routes, visits -> visits.next(day)).min(Comparator.naturalOrder()));
    }

    private static Stream<LocalDate> each(Collection<VisitPattern> routes,
            Function<VisitPattern, Optional<LocalDate>> visit) {
        return routes.stream().flatMap(visits -> visit.apply(visits).stream());
    }

    /** The day is no visit of the routes; {@code why} says more where more is known. */
    public Problem notAVisit(LocalDate day, String why) {
        var problem = tell(HttpStatus.UNPROCESSABLE_CONTENT, "NOT_A_VISIT",
                "No visit on " + day + (why.isEmpty() ? "" : " (" + why + ")"));
        return why.isEmpty() ? problem : problem.with("why", why);
    }

    Problem tell(HttpStatus status, String code, String sentence) {
        var problem = Problem.of(status, code, sentence + "; the nearest before it: " + told(previous) + ", after it: "
                + told(next) + ".");
        problem = previous.isEmpty() ? problem : problem.with("previous", previous.get());
        return next.isEmpty() ? problem : problem.with("next", next.get());
    }

    private static String told(Optional<LocalDate> day) {
        return day.map(LocalDate::toString).orElse("none");
    }
}
