package org.collarbook.dispatch.lists;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;

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

/** What a driver is told at each stop of 2026-12-03, the next visit being 2026-12-17; due by 49 CFR 180.209(e). */
@RegisterTest
class DriverListTests {

    private static final String OVERDUE = "2010-05";
    private static final String IN_DATE = "2024-01";
    private static final String ASK = "before the depot or a qualified person has been asked";

    private final Api api;
    private final Given given;
    private final GivenRoutes routes;
    private UUID depot;
    private UUID site;
    private String route;

    DriverListTests(Api api, Given given, JdbcClient jdbc) {
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
        var code = routes.route(depot, vehicle, "FREQ=WEEKLY;INTERVAL=2;BYDAY=TH", LocalDate.of(2026, 12, 3), stops);
        assertThat(list(code).text("/asked/visit")).isEqualTo("2026-12-03");
        return code;
    }

    private Answer list(String of) {
        return routes.list(of, null);
    }

    private UUID tank(String kind, String specification) {
        var body = Given.cylinder();
        body.put("kind", kind);
        body.put("specification", specification);
        body.put("waterCapacity", "500 gal");
        body.put("servicePressure", "250");
        body.remove("tare");
        return routes.at(site, body);
    }

    private static List<String> texts(Answer answer, String pointer) {
        return answer.at(pointer).valueStream().map(text -> text.asString()).toList();
    }

    @Test
    void tellsTheStopsInOrderEachWithItsOwn() {
        var second = given.site(given.customer());
        var third = given.site(given.customer());
        var loop = route(null, third, site, second);
        routes.cylinder(site, OVERDUE);
        routes.cylinder(third, OVERDUE);
        var list = list(loop);
        assertThat(list.text("/asked/title")).isEqualTo("Route " + loop + ", Loop " + loop);
        assertThat(list.text("/asked/route/depot/id")).isEqualTo(depot.toString());
        assertThat(list.at("/asked/route/vehicle").isMissingNode()).isTrue();
        assertThat(list.at("/stops").valueStream().map(stop -> stop.at("/site/id").asString()))
                .containsExactly(third.toString(), site.toString(), second.toString());
        assertThat(list.at("/stops").valueStream().map(stop -> stop.at("/position").asInt())).containsExactly(1, 2, 3);
        assertThat(list.at("/stops").valueStream().map(stop -> stop.at("/containers").size())).containsExactly(1, 1, 0);
        assertThat(list.text("/stops/0/next")).isEqualTo("2026-12-17");
        assertThat(list.text("/stops/0/route")).isEqualTo(loop);
        assertThat(list.at("/count").asInt()).isEqualTo(2);
        assertThat(list.text("/caution")).contains("Look at the container before every fill");
    }

    @Test
    void anOverdueOneIsNotToppedOff() {
        routes.cylinder(site, OVERDUE);
        var list = list(route);
        var at = "/stops/0/containers/0";
        assertThat(list.text(at + "/status")).isEqualTo("OVERDUE");
        assertThat(list.text(at + "/action")).isEqualTo("SWAP");
        assertThat(list.text(at + "/due")).isEqualTo("2022-05");
        assertThat(list.text(at + "/lastDay")).isEqualTo("2022-05-31");
        assertThat(list.text(at + "/reason/citation/section")).isEqualTo("180.209(e)");
        assertThat(texts(list, at + "/check")).containsExactly(
                "Compare the serial and the latest stamped date with this line; where they differ, ask the depot first.",
                "Overdue: do not top it off.",
                "No fill before it fell due is on record: do not load it with gas in it " + ASK + ".");
    }

    /** Filled before it fell due it may be carried, 49 CFR 180.205(c), but not topped off. */
    @Test
    void oneFilledInTimeMayBeCarried() {
        var id = routes.cylinder(site, "2014-11");
        api.as(Role.FILLER).with("Idempotency-Key", Given.serial()).post("/api/fills", Map.of("containerId", id,
                "filledAt", "2026-11-20T12:00:00Z", "specificGravity", 0.508, "netAfterLb", 19.5, "lookedAt", true,
                "leakChecked", true)).expect(201);
        var list = list(route);
        assertThat(list.text("/stops/0/containers/0/status")).isEqualTo("USE_UP");
        assertThat(texts(list, "/stops/0/containers/0/check")).contains("Past its month: do not top it off.")
                .noneMatch(check -> check.contains("load"));
    }

    @Test
    void aTankStaysAndACargoTankIsBroughtIn() {
        routes.held(tank("STATIONARY_TANK", "ASME"), HoldReason.LEAKING);
        routes.held(tank("CARGO_TANK", "MC-331"), HoldReason.DENTED);
        routes.held(tank("PORTABLE_TANK", "DOT-51"), HoldReason.DENTED);
        var list = list(route);
        assertThat(list.at("/stops/0/containers").valueStream()
                .map(one -> one.at("/kind").asString() + " " + one.at("/action").asString()))
                .containsExactlyInAnyOrder("STATIONARY_TANK WORK_AT_SITE", "CARGO_TANK BRING_IN",
                        "PORTABLE_TANK BRING_IN");
        for (var one : list.at("/stops/0/containers")) {
            var checks = one.at("/check").valueStream().map(text -> text.asString()).toList();
            if (one.at("/kind").asString().equals("STATIONARY_TANK")) {
                assertThat(checks).contains("It stays where it stands: do not drain, vent or move it.")
                        .noneMatch(check -> check.contains("load it"));
            } else {
                assertThat(checks).contains("Do not drain or vent it on the road.")
                        .anyMatch(check -> check.contains("do not load it " + ASK));
            }
        }
        assertThat(list.at("/sizes")).isEmpty();
    }

    /** Leaking, damaged, burnt or overfilled, it is not loaded before somebody who knows was asked; common practice. */
    @ParameterizedTest
    @EnumSource(value = HoldReason.class, names = "LOST", mode = EnumSource.Mode.EXCLUDE)
    void aHeldOneTellsWhy(HoldReason reason) {
        routes.held(routes.cylinder(site, IN_DATE), reason);
        var list = list(route);
        var at = "/stops/0/containers/0";
        assertThat(list.text(at + "/status")).isEqualTo("ON_HOLD");
        assertThat(list.text(at + "/reason/text")).isEqualTo("A hold stands. " + reason.sentence());
        assertThat(list.text(at + "/reason/citation/section")).isEqualTo(reason.citation().section());
        assertThat(texts(list, at + "/check")).contains("Held: " + reason.sentence())
                .anyMatch(check -> check.startsWith("Put nothing in, and do not load it ") && check.contains(ASK));
    }

    @ParameterizedTest
    @EnumSource(value = HoldReason.class, names = {"LEAKING", "DENTED", "CORRODED", "FIRE_OR_OVERHEATED", "ACCIDENT",
            "OVERFILLED_OR_DISCHARGED", "VALVE_DEFECT"})
    void anUnsafeOneIsNotLoadedEvenEmpty(HoldReason reason) {
        routes.held(routes.cylinder(site, IN_DATE), reason);
        assertThat(texts(list(route), "/stops/0/containers/0/check"))
                .contains("Put nothing in, and do not load it " + ASK + ".");
    }

    @Test
    void oneThatIsLiftedIsNotListed() {
        var hold = routes.held(routes.cylinder(site, IN_DATE), HoldReason.RECALLED);
        assertThat(list(route).at("/count").asInt()).isEqualTo(1);
        api.as(Role.CLERK).post("/api/holds/" + hold + "/lifts", Map.of("by", "CLERK", "note", "not concerned"))
                .expect(201);
        assertThat(list(route).at("/count").asInt()).isZero();
    }

    @Test
    void oneThatIsHeldForTwoReasonsTellsBothAndOneThatIsLostIsLeftOut() {
        var id = routes.cylinder(site, OVERDUE);
        routes.held(id, HoldReason.DENTED);
        routes.held(id, HoldReason.ILLEGIBLE_MARKS);
        assertThat(list(route).text("/stops/0/containers/0/reason/text")).isEqualTo(
                "A hold stands. It is dented. Its marks cannot be read.");
        routes.held(id, HoldReason.LOST);
        assertThat(list(route).at("/count").asInt()).isZero();
    }

    @ParameterizedTest
    @CsvSource({"VEHICLE", "REQUALIFIER"})
    void whatIsOnItsWayIsNotListed(String kind) {
        var id = routes.cylinder(site, OVERDUE);
        assertThat(list(route).at("/count").asInt()).isEqualTo(1);
        var place = routes.placed(kind);
        given.moved(id, place, "2026-11-22T09:00:00Z");
        assertThat(list(route).at("/count").asInt()).isZero();
        var there = api.as(Role.DISPATCHER).get("/api/pull-list?site=" + place).expect(200);
        assertThat(there.at("/stops")).isEmpty();
    }

    @Test
    void whatCannotBeToldIsListedWithWhatIsMissing() {
        var body = Given.cylinder();
        body.remove("collarRead");
        body.remove("manufactured");
        var id = routes.at(site, body);
        var list = list(route);
        assertThat(list.at("/count").asInt()).isZero();
        assertThat(list.text("/stops/0/undetermined/0/id")).isEqualTo(id.toString());
        assertThat(texts(list, "/stops/0/undetermined/0/missing"))
                .contains("The requalification history is not known.").noneMatch(text -> text.contains("_"));
    }
}
