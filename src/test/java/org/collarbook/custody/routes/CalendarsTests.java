package org.collarbook.custody.routes;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.IntStream;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.Planned;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.SentStatements;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@RegisterTest
class CalendarsTests {

    private final Api api;
    private final Given given;
    private final Calendars calendars;
    private final Planned planned;

    CalendarsTests(Api api, Given given, Calendars calendars, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.calendars = calendars;
        this.planned = new Planned(flyway);
    }

    private UUID route(UUID depot, List<UUID> stops) {
        return UUID.fromString(api.as(Role.CLERK).post("/api/routes", Ways.everyThursday(depot, stops)).expect(201)
                .id());
    }

    @Test
    void aCalendarHasTheRoutesAskedForAndThoseThatShareAStop() {
        var depot = given.site(null);
        var sites = IntStream.range(0, 3).mapToObj(i -> given.site(given.customer())).toList();
        var first = route(depot, List.of(sites.get(0), sites.get(1)));
        var neighbour = route(given.site(null), List.of(sites.get(1), sites.get(2)));
        var empty = route(depot, List.of());
        var farther = route(given.site(null), List.of(sites.get(2)));
        var code = calendars.all().route(first).orElseThrow().code();

        assertThat(ids(calendars.around(first.toString()))).containsExactlyInAnyOrder(first, neighbour);
        assertThat(ids(calendars.around(code))).containsExactlyInAnyOrder(first, neighbour);
        assertThat(ids(calendars.around(empty.toString()))).containsExactly(empty);
        assertThat(calendars.around("no such route' or 1=1").routes()).isEmpty();
        assertThat(ids(calendars.ofDepot(depot))).containsExactlyInAnyOrder(first, neighbour, empty);
        assertThat(ids(calendars.ofSites(List.of(sites.get(2))))).containsExactlyInAnyOrder(neighbour, farther);
        assertThat(calendars.ofSites(List.of()).routes()).isEmpty();
        assertThat(ids(calendars.all())).contains(first, neighbour, empty, farther);

        var calendar = calendars.around(first.toString());
        assertThat(calendar.callingAt(sites.get(1)).stream().map(Route::id)).containsExactlyInAnyOrder(first,
                neighbour);
        assertThat(calendar.next(sites.get(1), LocalDate.of(2026, 11, 26)).orElseThrow().day())
                .isEqualTo(LocalDate.of(2026, 12, 3));
    }

    private static List<UUID> ids(VisitCalendar calendar) {
        return calendar.routes().stream().map(Route::id).toList();
    }

    @Test
    void aCalendarIsReadInOneStatement() {
        var depot = given.site(null);
        var id = route(depot, List.of(depot));
        List<Supplier<VisitCalendar>> all = List.of(() -> calendars.around(id.toString()),
                () -> calendars.ofDepot(depot), () -> calendars.ofSites(List.of(depot)), calendars::all);
        for (var read : all) {
            try (var sent = SentStatements.byThisThread()) {
                read.get();
                assertThat(sent.count()).isEqualTo(1);
            }
        }
    }

    /** All holidays belong to each route, so they are read whole; nothing else is. */
    @ParameterizedTest
    @ValueSource(strings = {"n.id = '00000000-0000-7000-8000-000000000000' or n.code = 'x'",
            "n.depot_id = '00000000-0000-7000-8000-000000000000'"})
    void routesAreReachedByIndex(String named) throws SQLException {
        var plan = planned.plan("route, site, holiday",
                Calendars.ROUTES + Calendars.AND_NEIGHBOURS.formatted(named));
        Planned.assertReachedByIndex(plan.replaceAll("Seq Scan on holiday h.*\n(?: +Disabled: true\n)?", ""));
    }
}
