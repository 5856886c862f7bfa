package org.collarbook.custody.routes;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Today is Wednesday, 2026-11-25. */
@RegisterTest
class RoutesTests {

    private static final UUID NOBODY = UUID.fromString("00000000-0000-7000-8000-000000000000");

    private final Api api;
    private final Api.Session dispatcher;
    private final Given given;
    private final Tables tables;
    private final TestClock clock;

    RoutesTests(Api api, Given given, Tables tables, TestClock clock) {
        this.api = api;
        this.dispatcher = api.as(Role.DISPATCHER);
        this.given = given;
        this.tables = tables;
        this.clock = clock;
    }

    @Test
    void theKindOfASiteStaysWhileARouteNamesIt() {
        var body = Given.depot();
        var depot = UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
        var route = Ways.everyThursday(depot, List.of());
        dispatcher.post("/api/routes", route).expect(201);
        var read = api.as(Role.CLERK).get("/api/sites/" + depot).expect(200);
        body.put("kind", "REQUALIFIER");
        tables.unchangedBy(() -> assertThat(api.as(Role.CLERK).ifMatch(read).put("/api/sites/" + depot, body)
                .expectProblem(409, "SITE_ON_ROUTE").text("/routes/0")).isEqualTo(route.get("code")));
        body.put("kind", "DEPOT");
        body.put("name", "Renamed");
        api.as(Role.CLERK).ifMatch(read).put("/api/sites/" + depot, body).expect(200);
    }

    @Test
    void aRouteIsOpenedReadChangedAndListed() {
        var depot = given.site(null);
        var first = given.site(given.customer());
        var second = given.site(given.customer());
        var body = Ways.everyThursday(depot, List.of(second, first, depot));
        var opened = dispatcher.post("/api/routes", body).expect(201);
        var path = opened.header("Location");
        var read = api.as(Role.FILLER).get(path).expect(200);
        assertThat(read.etag()).isEqualTo("\"0\"");
        assertThat(read.json()).isEqualTo(opened.json());
        assertThat(read.at("/vehicle").isMissingNode()).isTrue();
        assertThat(read.at("/stops").toString()).isEqualTo("[\"%s\",\"%s\",\"%s\"]".formatted(second, first, depot));
        assertThat(read.at("/visits").toString())
                .isEqualTo("{\"rule\":\"FREQ=WEEKLY;BYDAY=TH\",\"from\":\"2026-11-26\",\"onHolidays\":false}");
        assertThat(read.at("/nextVisits").toString()).isEqualTo("[\"2026-11-26\",\"2026-12-03\"]");
        assertThat(read.at("/exceptions")).isEmpty();

        var vehicle = Ways.vehicle(api);
        body.put("vehicle", vehicle);
        body.put("stops", List.of(first));
        body.put("visits", Ways.visits(" freq=monthly;bymonthday=-1 ", "2026-11-01", true));
        tables.unchangedBy(() -> {
            dispatcher.put(path, body).expectProblem(428, "IF_MATCH_REQUIRED");
            dispatcher.with("If-Match", "\"1\"").put(path, body).expectProblem(412, "STALE_VERSION");
        });
        var changed = dispatcher.ifMatch(opened).put(path, body).expect(200);
        assertThat(changed.etag()).isEqualTo("\"1\"");
        assertThat(changed.text("/vehicle")).isEqualTo(vehicle.toString());
        assertThat(changed.text("/visits/rule")).isEqualTo("FREQ=MONTHLY;BYMONTHDAY=-1");
        assertThat(changed.at("/stops").toString()).isEqualTo("[\"%s\"]".formatted(first));
        assertThat(changed.at("/nextVisits").toString()).isEqualTo("[\"2026-11-30\",\"2026-12-31\"]");
        dispatcher.ifMatch(opened).put(path, body).expectProblem(412, "STALE_VERSION");

        dispatcher.post("/api/routes", Ways.everyThursday(depot, List.of())).expect(201);
        var page = dispatcher.get("/api/routes?size=1").expect(200);
        assertThat(page.at("/items")).hasSize(1);
        var next = dispatcher.get("/api/routes?size=1&cursor=" + page.text("/next")).expect(200);
        assertThat(next.text("/items/0/id")).isGreaterThan(page.text("/items/0/id"));
    }

    @Test
    void aRepeatUnderTheSameKeyOpensOneRoute() {
        var body = Ways.everyThursday(given.site(null), List.of());
        var once = dispatcher.with("Idempotency-Key", Given.serial());
        var first = once.post("/api/routes", body).expect(201);
        tables.unchangedBy(() -> {
            var again = once.post("/api/routes", body).expect(201);
            assertThat(again.header("Idempotent-Replay")).isEqualTo("true");
            assertThat(again.id()).isEqualTo(first.id());
            assertThat(again.etag()).isEqualTo(first.etag());
            body.put("name", "Other");
            once.post("/api/routes", body).expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
        });
    }

    @Test
    void aCodeIsInUseOnce() {
        var depot = given.site(null);
        var body = Ways.everyThursday(depot, List.of());
        dispatcher.post("/api/routes", body).expect(201);
        var other = Ways.everyThursday(depot, List.of());
        var opened = dispatcher.post("/api/routes", other).expect(201);
        other.put("code", body.get("code"));
        tables.unchangedBy(() -> {
            dispatcher.post("/api/routes", body).expectProblem(409, "CODE_TAKEN");
            dispatcher.ifMatch(opened).put(opened.header("Location"), other).expectProblem(409, "CODE_TAKEN");
        });
    }

    /** At 03:00 in UTC it is still the evening before in Chicago, where the depot is. */
    @Test
    void todayIsTheDateAtTheDepot() {
        var opened = dispatcher.post("/api/routes", Ways.everyThursday(given.site(null), List.of())).expect(201);
        clock.set(java.time.Instant.parse("2026-12-04T03:00:00Z"));
        assertThat(dispatcher.get(opened.header("Location")).text("/nextVisits/0")).isEqualTo("2026-12-03");
        clock.set(java.time.Instant.parse("2026-12-04T07:00:00Z"));
        assertThat(dispatcher.get(opened.header("Location")).text("/nextVisits/0")).isEqualTo("2026-12-10");
    }

    @Test
    void allWrongInputsAreToldAtOnce() {
        var depot = given.site(null);
        var site = given.site(given.customer());
        var vehicle = Ways.vehicle(api);
        tables.unchangedBy(() -> {
            assertThat(dispatcher.post("/api/routes", Map.of()).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/code", "MISSING", "/name", "MISSING", "/depot", "MISSING", "/visits",
                            "MISSING", "/stops", "MISSING"));
            var body = Ways.ruled("FREQ=HOURLY", vehicle, List.of(site, vehicle, site, NOBODY));
            body.put("code", "c".repeat(41));
            body.put("vehicle", depot);
            body.put("visits", Ways.visits("FREQ=HOURLY", "1969-12-31", null));
            var refused = dispatcher.post("/api/routes", body).expectProblem(400, "INVALID_INPUT");
            assertThat(refused.errors()).isEqualTo(Map.of("/code", "INVALID_TEXT", "/depot", "WRONG_KIND", "/vehicle",
                    "WRONG_KIND", "/stops/1", "WRONG_KIND", "/stops/2", "TOLD_TWICE", "/stops/3", "UNKNOWN_SITE",
                    "/visits/rule", "INVALID_RULE", "/visits/from", "OUT_OF_RANGE", "/visits/onHolidays", "MISSING"));
            refused.at("/errors").forEach(error -> assertThat(error.at("/accepted").asString()).isNotBlank());
        });
    }

    static Stream<Arguments> wrongRules() {
        return Stream.of(rule(null, "MISSING"), rule(" ", "MISSING"), rule("every Thursday", "INVALID_RULE"),
                rule("FREQ=HOURLY", "INVALID_RULE"), rule("FREQ=MINUTELY;INTERVAL=1440", "INVALID_RULE"),
                rule("FREQ=SECONDLY", "INVALID_RULE"), rule("FREQ=DAILY;BYHOUR=9", "INVALID_RULE"),
                rule("FREQ=DAILY;BYMINUTE=0", "INVALID_RULE"), rule("RRULE:FREQ=DAILY", "INVALID_RULE"),
                rule("FREQ=DAILY;INTERVAL=0", "INVALID_RULE"), rule("FREQ=DAILY;INTERVAL=1001", "INVALID_RULE"),
                rule("FREQ=DAILY;INTERVAL=2147483647", "INVALID_RULE"),
                rule("FREQ=DAILY;INTERVAL=2147483648", "INVALID_RULE"), rule("FREQ=DAILY;COUNT=0", "INVALID_RULE"),
                rule("FREQ=DAILY;COUNT=3;UNTIL=20270101", "INVALID_RULE"),
                rule("FREQ=DAILY;UNTIL=20271231T000000Z", "INVALID_RULE"),
                rule("FREQ=DAILY;UNTIL=20261332", "INVALID_RULE"), rule("FREQ=DAILY\u0000", "INVALID_RULE"),
                rule("RSCALE=GREGORIAN;FREQ=MONTHLY;BYMONTHDAY=31;SKIP=BACKWARD", "INVALID_RULE"),
                rule("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "NO_VISIT"),
                rule("FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30", "NO_VISIT"),
                rule("FREQ=MONTHLY;BYDAY=MO;BYSETPOS=6", "NO_VISIT"),
                rule("FREQ=DAILY;UNTIL=20261125", "NO_VISIT"),
                rule("FREQ=YEARLY;INTERVAL=2;BYMONTH=2;BYMONTHDAY=29;UNTIL=20271231", "NO_VISIT"),
                rule("FREQ=DAILY;BYDAY=" + "MO,".repeat(170) + "MO", "INVALID_TEXT"));
    }

    private static Arguments rule(@Nullable String rule, String code) {
        return Arguments.of(rule, code);
    }

    @ParameterizedTest
    @MethodSource("wrongRules")
    void aRuleThatGivesNoDaysIsRefused(@Nullable String rule, String code) {
        var body = Ways.everyThursday(given.site(null), List.of());
        body.put("visits", Ways.visits(rule, "2026-11-26", true));
        tables.unchangedBy(() -> assertThat(dispatcher.post("/api/routes", body).expectProblem(400, "INVALID_INPUT")
                .errors()).isEqualTo(Map.of("/visits/rule", code)));
    }

    static Stream<Arguments> wrongFields() {
        return Stream.of(Arguments.of("name", "n\u0001", "/name", "INVALID_TEXT"),
                Arguments.of("depot", NOBODY, "/depot", "UNKNOWN_SITE"),
                Arguments.of("vehicle", NOBODY, "/vehicle", "UNKNOWN_SITE"),
                Arguments.of("depot", "me", "/depot", "WRONG_TYPE"),
                Arguments.of("stops", List.of("me"), "/stops/0", "WRONG_TYPE"),
                Arguments.of("stops", "me", "/stops", "WRONG_TYPE"),
                Arguments.of("visits", Ways.visits("FREQ=DAILY", "2026-02-30", true), "/visits/from", "WRONG_TYPE"),
                Arguments.of("visits", Ways.visits("FREQ=DAILY", "2101-01-01", true), "/visits/from", "OUT_OF_RANGE"),
                Arguments.of("visits", Ways.visits("FREQ=DAILY", "0001-01-01", true), "/visits/from", "OUT_OF_RANGE"),
                Arguments.of("visits", Ways.visits("FREQ=DAILY", "9999-12-31", true), "/visits/from", "OUT_OF_RANGE"),
                Arguments.of("visits", Ways.visits("FREQ=DAILY", null, true), "/visits/from", "MISSING"),
                Arguments.of("driver", "x", "/driver", "UNKNOWN_FIELD"));
    }

    @ParameterizedTest
    @MethodSource("wrongFields")
    void aWrongRouteIsRefusedByFieldAndCode(String field, Object value, String pointer, String code) {
        var body = Ways.everyThursday(given.site(null), List.of());
        body.put(field, value);
        tables.unchangedBy(() -> assertThat(dispatcher.post("/api/routes", body).expectProblem(400, "INVALID_INPUT")
                .errors()).isEqualTo(Map.of(pointer, code)));
    }

    @Test
    void aRouteHasAtMostFiveHundredStops() {
        var stops = new ArrayList<UUID>();
        for (int i = 0; i < 501; i++) {
            stops.add(UUID.randomUUID());
        }
        var body = Ways.everyThursday(given.site(null), stops);
        tables.unchangedBy(() -> assertThat(dispatcher.post("/api/routes", body).expectProblem(400, "INVALID_INPUT")
                .errors()).isEqualTo(Map.of("/stops", "TOO_MANY")));
    }

    @Test
    void whatIsNotKnownIsNotFound() {
        var body = Ways.everyThursday(given.site(null), List.of());
        tables.unchangedBy(() -> {
            dispatcher.get("/api/routes/" + NOBODY).expectProblem(404, "NOT_FOUND");
            dispatcher.with("If-Match", "\"0\"").put("/api/routes/" + NOBODY, body).expectProblem(404, "NOT_FOUND");
            dispatcher.get("/api/routes?cursor=x").expectProblem(400, "INVALID_INPUT");
            api.as(Role.YARD).post("/api/routes", body).expectProblem(403, "FORBIDDEN");
        });
    }
}
