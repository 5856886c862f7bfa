package org.collarbook.dispatch.lists;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.collarbook.holds.HoldReason;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What a depot loads for its routes: that of 2026-12-03 is there again on 2026-12-17; due by 49 CFR 180.209(e). */
@RegisterTest
class LoadTests {

    private static final String OVERDUE = "2010-05";
    private static final String IN_DATE = "2024-01";

    private final Api api;
    private final Given given;
    private final GivenRoutes routes;
    private UUID depot;
    private UUID site;
    private String route;

    LoadTests(Api api, Given given, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.routes = new GivenRoutes(api, given, jdbc);
        this.depot = this.site = new UUID(0, 0);
        this.route = "";
    }

    @BeforeEach
    void aRouteWithOneStop() {
        depot = given.site(null);
        site = given.site(given.customer());
        route = route(null, site);
    }

    private String route(@Nullable UUID vehicle, UUID... stops) {
        return routes.route(depot, vehicle, "FREQ=WEEKLY;INTERVAL=2;BYDAY=TH", LocalDate.of(2026, 12, 3), stops);
    }

    private Answer list(String of) {
        return routes.list(of, null);
    }

    @Test
    void countsWhatTheDepotHasAndTheRackTakes() {
        var vehicle = routes.placed("VEHICLE");
        routes.rack(vehicle, "20 lb", 1);
        var loop = route(vehicle, site);
        routes.cylinder(site, OVERDUE);
        routes.cylinder(site, OVERDUE);
        routes.cylinder(site, "2014-11");
        // the last visit's next is 2026-12-17: the last day of 2026-12 survives it, that of 2026-11 does not
        routes.cylinder(depot, "2014-12");
        routes.cylinder(depot, "2014-11");
        routes.held(routes.cylinder(depot, IN_DATE), HoldReason.DENTED);
        var another = Given.cylinder();
        another.put("owned", false);
        routes.at(depot, another);
        var size = list(loop).at("/sizes/0");
        assertThat(list(loop).at("/sizes")).hasSize(1);
        assertThat(size.at("/size").asString()).isEqualTo("20 lb");
        assertThat(size.at("/load").asInt()).isEqualTo(3);
        assertThat(size.at("/inDateAtDepot").asInt()).isEqualTo(1);
        assertThat(size.at("/shortfall").asInt()).isEqualTo(2);
        assertThat(size.at("/rack").asInt()).isEqualTo(1);
        assertThat(size.at("/overRack").asInt()).isEqualTo(2);
        assertThat(list(loop).text("/asked/route/vehicle/id")).isEqualTo(vehicle.toString());
    }

    @Test
    void whatIsNotKnownOfTheLoadIsNull() {
        routes.cylinder(site, OVERDUE);
        var size = list(route).at("/sizes/0");
        assertThat(size.at("/inDateAtDepot").asInt()).isZero();
        assertThat(size.at("/shortfall").asInt()).isEqualTo(1);
        assertThat(size.at("/rack").isMissingNode()).isTrue();
        assertThat(size.at("/overRack").isMissingNode()).isTrue();
        var bySite = api.as(Role.DISPATCHER).get("/api/pull-list?site=" + site).expect(200).at("/sizes/0");
        assertThat(bySite.at("/load").asInt()).isEqualTo(1);
        assertThat(bySite.at("/inDateAtDepot").isMissingNode()).isTrue();
        assertThat(bySite.at("/shortfall").isMissingNode()).isTrue();
    }

    @Test
    void aDepotsRoutesOfADayAreOneList() {
        var other = given.site(given.customer());
        var later = routes.on(depot, List.of(LocalDate.of(2026, 12, 4), LocalDate.of(2026, 12, 18)), other);
        routes.cylinder(site, OVERDUE);
        routes.cylinder(other, OVERDUE);
        var dispatcher = api.as(Role.DISPATCHER);
        var thursday = dispatcher.get("/api/pull-list?depot=" + depot + "&visit=2026-12-03").expect(200);
        assertThat(thursday.at("/stops").valueStream().map(stop -> stop.at("/route").asString()))
                .containsExactly(route);
        var all = dispatcher.get("/api/pull-list?depot=" + depot).expect(200);
        assertThat(all.at("/stops").valueStream().map(stop -> stop.at("/route").asString()))
                .containsExactlyInAnyOrder(route, later).isSorted();
        assertThat(all.at("/sizes/0/load").asInt()).isEqualTo(2);
        assertThat(all.at("/sizes/0/inDateAtDepot").asInt()).isZero();
        var before = dispatcher.get("/api/pull-list?depot=" + depot + "&before=2022-05-31").expect(200);
        assertThat(before.at("/count").asInt()).isZero();
        assertThat(before.text("/asked/before")).isEqualTo("2022-05-31");
        var refused = dispatcher.get("/api/pull-list?depot=" + depot + "&visit=2026-12-05")
                .expectProblem(422, "NOT_A_VISIT");
        assertThat(refused.text("/previous")).isEqualTo("2026-12-04");
        assertThat(refused.text("/next")).isEqualTo("2026-12-17");
    }

    @Test
    void aSkippedDayIsNoVisit() {
        routes.except(route, LocalDate.of(2026, 12, 17), "SKIPPED", "stock-taking");
        var refused = api.as(Role.DISPATCHER).get("/api/routes/" + route + "/pull-list?visit=2026-12-17")
                .expectProblem(422, "NOT_A_VISIT");
        assertThat(refused.text("/detail")).isEqualTo("No visit on 2026-12-17 (" + route
                + " skipped: stock-taking); the nearest before it: 2026-12-03, after it: 2026-12-31.");
        assertThat(refused.text("/why")).isEqualTo(route + " skipped: stock-taking");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"nowhere/pull-list | 404", "nowhere/pull-list?visit=2026-12-03 | 404",
            "nowhere/pull-list?visit=soon | 400", "nowhere/pull-list?visit=2026-02-30 | 400",
            "nowhere/pull-list?visit=9999-12-31 | 400", "nowhere/pull-list?visit=1999-12-31&format=csv | 400"})
    void badQuestionsAreRefused(String path, int status) {
        api.as(Role.DISPATCHER).get("/api/routes/" + path)
                .expectProblem(status, status == 404 ? "NOT_FOUND" : "INVALID_INPUT");
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void isOpenToThoseWhoWorkFromIt(Role role) {
        boolean open = switch (role) {
            case DISPATCHER, YARD, CLERK, ADMINISTRATOR -> true;
            case FILLER, PORTAL -> false;
        };
        var session = role == Role.PORTAL ? api.asPortalOf(new CustomerId(given.customer())) : api.as(role);
        for (var path : List.of("/api/routes/" + route + "/pull-list", "/api/pull-list?site=" + site,
                "/api/pull-list/place-unknown?before=2026-12-01", "/api/routes/" + route + "/pull-list?format=csv")) {
            assertThat(session.get(path).status()).as(path).isEqualTo(open ? 200 : 403);
            assertThat(api.anonymous().get(path).status()).isEqualTo(401);
        }
    }
}
