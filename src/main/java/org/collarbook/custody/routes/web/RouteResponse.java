package org.collarbook.custody.routes.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

import org.collarbook.custody.routes.ExceptionKind;
import org.collarbook.custody.routes.Route;
import org.collarbook.custody.routes.VisitPattern;
import org.jspecify.annotations.Nullable;

/** {@code nextVisits}: the next two, today's among them; fewer when no later one is known. */
record RouteResponse(UUID id, int version, String code, String name, UUID depot, @Nullable UUID vehicle,
        RouteDays visits,
        List<UUID> stops, List<DayException> exceptions, List<LocalDate> nextVisits) {

    record RouteDays(String rule, LocalDate from, boolean onHolidays) {}

    record DayException(LocalDate day, ExceptionKind kind, String reason) {}

    /** {@code today}: the date at the depot. */
    static RouteResponse from(Route route, LocalDate today) {
        var visits = route.visits();
        return new RouteResponse(route.id(), route.version(), route.code(), route.name(), route.depot(),
                route.vehicle(), new RouteDays(visits.rule().text(), visits.from(), visits.onHolidays()), route.stops(),
                exceptions(visits), nextTwo(visits, today));
    }

    private static List<DayException> exceptions(VisitPattern visits) {
        return Stream.concat(of(ExceptionKind.SKIPPED, visits.skipped()), of(ExceptionKind.ADDED, visits.added()))
                .sorted(Comparator.comparing(DayException::day)).toList();
    }

    private static Stream<DayException> of(ExceptionKind kind, Map<LocalDate, String> days) {
        return days.entrySet().stream().map(day -> new DayException(day.getKey(), kind, day.getValue()));
    }

    private static List<LocalDate> nextTwo(VisitPattern visits, LocalDate today) {
        var next = new ArrayList<LocalDate>();
        var after = today.minusDays(1);
        for (Optional<LocalDate> day; next.size() < 2 && (day = visits.next(after)).isPresent();) {
            after = day.get();
            next.add(after);
        }
        return next;
    }
}
