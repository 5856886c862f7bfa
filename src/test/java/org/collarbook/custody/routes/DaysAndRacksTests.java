package org.collarbook.custody.routes;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Today is Wednesday, 2026-11-25. Holidays of these tests lie in 2031, so that no other test meets them. */
@RegisterTest
class DaysAndRacksTests {

    private static final String NOBODY = "00000000-0000-7000-8000-000000000000";

    private final Api api;
    private final Api.Session dispatcher;
    private final Given given;
    private final Tables tables;
    private final TestClock clock;

    DaysAndRacksTests(Api api, Given given, Tables tables, TestClock clock) {
        this.api = api;
        this.dispatcher = api.as(Role.DISPATCHER);
        this.given = given;
        this.tables = tables;
        this.clock = clock;
    }

    private Answer thursdays(UUID... stops) {
        return dispatcher.post("/api/routes", Ways.everyThursday(given.site(null), List.of(stops))).expect(201);
    }

    private static Map<String, String> said(String kind, String reason) {
        return Map.of("kind", kind, "reason", reason);
    }

    @Test
    void aVisitIsSkippedAndAnotherDayAdded() {
        var path = thursdays().header("Location");
        var skipped = dispatcher.put(path + "/exceptions/2026-11-26", said("SKIPPED", "Truck in the shop")).expect(200);
        assertThat(skipped.etag()).isEqualTo("\"1\"");
        assertThat(skipped.at("/exceptions").toString())
                .isEqualTo("[{\"day\":\"2026-11-26\",\"kind\":\"SKIPPED\",\"reason\":\"Truck in the shop\"}]");
        assertThat(skipped.at("/nextVisits").toString()).isEqualTo("[\"2026-12-03\",\"2026-12-10\"]");
        var added = dispatcher.put(path + "/exceptions/2026-11-27", said("added", "Instead")).expect(200);
        assertThat(added.at("/nextVisits").toString()).isEqualTo("[\"2026-11-27\",\"2026-12-03\"]");
        // said again, it is the same version; said otherwise, another
        assertThat(dispatcher.put(path + "/exceptions/2026-11-27", said("ADDED", "Instead")).expect(200).etag())
                .isEqualTo("\"2\"");
        assertThat(dispatcher.put(path + "/exceptions/2026-11-27", said("ADDED", "On Friday")).expect(200).etag())
                .isEqualTo("\"3\"");

        var days = dispatcher.get(path + "/visits?from=2026-11-20&to=2026-12-09").expect(200);
        assertThat(days.at("/visits").toString())
                .isEqualTo("[{\"day\":\"2026-11-27\",\"added\":\"On Friday\"},{\"day\":\"2026-12-03\"}]");
        assertThat(days.at("/notDriven").toString())
                .isEqualTo("[{\"day\":\"2026-11-26\",\"why\":\"SKIPPED\",\"reason\":\"Truck in the shop\"}]");

        dispatcher.delete(path + "/exceptions/2026-11-26").expect(204);
        assertThat(dispatcher.get(path).etag()).isEqualTo("\"4\"");
        assertThat(dispatcher.get(path).text("/nextVisits/0")).isEqualTo("2026-11-26");
        tables.unchangedBy(
                () -> dispatcher.delete(path + "/exceptions/2026-11-26").expectProblem(404, "NOT_FOUND"));
    }

    @Test
    void whatSaysNothingNewIsRefusedWithTheNearestVisits() {
        var path = thursdays().header("Location");
        dispatcher.put(path + "/exceptions/2026-12-10", said("SKIPPED", "x")).expect(200);
        tables.unchangedBy(() -> {
            var none = dispatcher.put(path + "/exceptions/2026-12-09", said("SKIPPED", "x"))
                    .expectProblem(422, "NOT_A_VISIT");
            assertThat(none.text("/previous") + " " + none.text("/next")).isEqualTo("2026-12-03 2026-12-17");
            assertThat(dispatcher.put(path + "/exceptions/2026-11-25", said("SKIPPED", "x"))
                    .expectProblem(422, "NOT_A_VISIT").text("/detail")).contains("2026-11-26");
            var already = dispatcher.put(path + "/exceptions/2026-12-10", said("ADDED", "x"))
                    .expectProblem(409, "VISIT_ALREADY");
            assertThat(already.text("/previous") + " " + already.text("/next")).isEqualTo("2026-12-03 2026-12-17");
        });
        assertThat(dispatcher.get(path).etag()).isEqualTo("\"1\"");
    }

    @Test
    void aWrongExceptionIsRefused() {
        var path = thursdays().header("Location") + "/exceptions/";
        tables.unchangedBy(() -> {
            assertThat(dispatcher.put(path + "1969-12-31", Map.of()).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("day", "OUT_OF_RANGE", "/kind", "MISSING", "/reason", "MISSING"));
            assertThat(dispatcher.put(path + "2026-11-26", said("LATE", "r".repeat(201)))
                    .expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/kind", "UNKNOWN_WORD", "/reason", "INVALID_TEXT"));
            dispatcher.put(path + "tomorrow", said("SKIPPED", "x")).expectProblem(400, "INVALID_INPUT");
            dispatcher.put(path + "+999999999-12-31", said("SKIPPED", "x")).expectProblem(400, "INVALID_INPUT");
            dispatcher.put("/api/routes/" + NOBODY + "/exceptions/2026-11-26", said("SKIPPED", "x"))
                    .expectProblem(404, "NOT_FOUND");
            dispatcher.delete("/api/routes/" + NOBODY + "/exceptions/2026-11-26").expectProblem(404, "NOT_FOUND");
        });
    }

    @Test
    void aChangeOfTheRouteAgainstTheDaysOfBeforeIsStale() {
        var opened = thursdays();
        dispatcher.put(opened.header("Location") + "/exceptions/2026-11-26", said("SKIPPED", "x")).expect(200);
        var body = Ways.everyThursday(given.site(null), List.of());
        dispatcher.ifMatch(opened).put(opened.header("Location"), body).expectProblem(412, "STALE_VERSION");
    }

    @Test
    void onAHolidayOnlyThoseAreDrivenThatSaySo() {
        var stops = given.site(given.customer());
        var path = thursdays(stops).header("Location");
        var always = Ways.everyThursday(given.site(null), List.of());
        always.put("visits", Ways.visits("FREQ=WEEKLY;BYDAY=TH", "2026-11-26", true));
        var open = dispatcher.post("/api/routes", always).expect(201).header("Location");
        // 2031-12-25 is a Thursday
        assertThat(dispatcher.put("/api/holidays/2031-12-25", Map.of("name", " Christmas Day ")).expect(200).body())
                .isEqualTo("{\"day\":\"2031-12-25\",\"name\":\"Christmas Day\"}");
        var between = "/visits?from=2031-12-20&to=2031-12-31";
        assertThat(dispatcher.get(path + between).at("/visits")).isEmpty();
        assertThat(dispatcher.get(path + between).at("/notDriven").toString())
                .isEqualTo("[{\"day\":\"2031-12-25\",\"why\":\"HOLIDAY\",\"reason\":\"Christmas Day\"}]");
        assertThat(dispatcher.get(open + between).at("/visits")).hasSize(1);
        assertThat(dispatcher.get("/api/holidays?from=2031-12-01&to=2031-12-31").expect(200).at("/holidays"))
                .hasSize(1);
        assertThat(dispatcher.put(path + "/exceptions/2031-12-25", said("SKIPPED", "x"))
                .expectProblem(422, "NOT_A_VISIT").text("/why")).isEqualTo("holiday: Christmas Day");
        dispatcher.put(path + "/exceptions/2031-12-25", said("ADDED", "Asked for")).expect(200);
        assertThat(dispatcher.get(path + between).at("/visits/0").toString())
                .isEqualTo("{\"day\":\"2031-12-25\",\"added\":\"Asked for\"}");

        dispatcher.put("/api/holidays/2031-12-25", Map.of("name", "First Christmas Day")).expect(200);
        assertThat(dispatcher.get("/api/holidays?from=2031-12-25&to=2031-12-25").text("/holidays/0/name"))
                .isEqualTo("First Christmas Day");
        dispatcher.delete("/api/holidays/2031-12-25").expect(204);
        tables.unchangedBy(() -> dispatcher.delete("/api/holidays/2031-12-25").expectProblem(404, "NOT_FOUND"));
        assertThat(dispatcher.get("/api/holidays").expect(200).text("/to")).isEqualTo("2027-11-25");
    }

    @Test
    void wrongHolidaysAreRefused() {
        tables.unchangedBy(() -> {
            assertThat(dispatcher.put("/api/holidays/2101-01-01", Map.of()).expectProblem(400, "INVALID_INPUT")
                    .errors()).isEqualTo(Map.of("day", "OUT_OF_RANGE", "/name", "MISSING"));
            dispatcher.put("/api/holidays/2031-02-29", Map.of("name", "x")).expectProblem(400, "INVALID_INPUT");
            api.as(Role.FILLER).put("/api/holidays/2031-02-28", Map.of("name", "x")).expectProblem(403, "FORBIDDEN");
        });
    }

    @ParameterizedTest
    @CsvSource({"from=2026-11-25&to=2026-11-24, to", "from=2026-11-25&to=2029-11-26, to", "from=1969-12-31, from",
            "from=2101-01-01, from", "to=2101-01-01, to", "from=x, from", "to=2026-02-30, to"})
    void theDaysAskedAboutAreBounded(String query, String pointer) {
        var path = thursdays().header("Location");
        for (var asked : List.of(path + "/visits?", "/api/holidays?")) {
            assertThat(dispatcher.get(asked + query).expectProblem(400, "INVALID_INPUT").errors())
                    .containsOnlyKeys(pointer);
        }
    }

    @Test
    void ninetyDaysAreToldAndThreeYearsMayBeAsked() {
        var path = thursdays().header("Location") + "/visits";
        var told = dispatcher.get(path).expect(200);
        assertThat(told.text("/from") + " " + told.text("/to")).isEqualTo("2026-11-25 2027-02-23");
        assertThat(told.at("/visits")).hasSize(13);
        assertThat(dispatcher.get(path + "?from=2026-11-25&to=2029-11-25").expect(200).at("/visits")).hasSize(157);
        dispatcher.get("/api/routes/" + NOBODY + "/visits").expectProblem(404, "NOT_FOUND");
    }

    @Test
    void aSiteIsVisitedByWhicheverRouteComesFirst() {
        var site = given.site(given.customer());
        var path = "/api/sites/" + site + "/visits";
        var nobody = dispatcher.get(path).expect(200);
        assertThat(nobody.text("/noneKnown/code")).isEqualTo("NO_ROUTE");
        assertThat(nobody.at("/next").isMissingNode()).isTrue();

        var once = Ways.ruled("FREQ=WEEKLY;BYDAY=TH;COUNT=1", given.site(null), List.of(site));
        var first = dispatcher.post("/api/routes", once).expect(201);
        var one = dispatcher.get(path).expect(200);
        assertThat(one.text("/next/day") + one.text("/next/route")).isEqualTo("2026-11-26" + first.id());
        assertThat(one.text("/noneKnown/code")).isEqualTo("NO_VISIT_AFTER_NEXT");

        var monthly = Ways.ruled("FREQ=MONTHLY;BYMONTHDAY=-1", given.site(null), List.of(site));
        var second = dispatcher.post("/api/routes", monthly).expect(201);
        var both = dispatcher.get(path).expect(200);
        assertThat(both.text("/next/code")).isEqualTo(once.get("code"));
        assertThat(both.text("/afterNext/day") + both.text("/afterNext/route"))
                .isEqualTo("2026-11-30" + second.id());
        assertThat(both.at("/noneKnown").isMissingNode()).isTrue();

        // it is still Thursday at the site, and that visit counts
        clock.set(Instant.parse("2026-11-27T03:00:00Z"));
        assertThat(dispatcher.get(path).text("/next/day")).isEqualTo("2026-11-26");
        clock.set(Instant.parse("2026-11-27T07:00:00Z"));
        assertThat(dispatcher.get(path).text("/next/day")).isEqualTo("2026-11-30");
        dispatcher.get("/api/sites/" + NOBODY + "/visits").expectProblem(404, "NOT_FOUND");
    }

    @Test
    void noVisitToComeIsSaidPlainly() {
        var site = given.site(given.customer());
        dispatcher.post("/api/routes", Ways.ruled("FREQ=DAILY;UNTIL=20261127", given.site(null), List.of(site)))
                .expect(201);
        clock.set(Instant.parse("2026-11-28T18:00:00Z"));
        assertThat(dispatcher.get("/api/sites/" + site + "/visits").text("/noneKnown/code"))
                .isEqualTo("NO_VISIT_TO_COME");
    }

    @Test
    void theRackOfAVehicleHasAVersionOfItsOwn() {
        var vehicle = Ways.vehicle(api);
        var path = "/api/sites/" + vehicle + "/rack";
        var empty = dispatcher.get(path).expect(200);
        assertThat(empty.etag()).isEqualTo("\"0\"");
        assertThat(empty.at("/places")).isEmpty();

        var places = Map.of("places", List.of(rack(" 20 LB", 40), rack("33.5 lb", 0), rack("60 lb WC", 6)));
        tables.unchangedBy(() -> {
            dispatcher.put(path, places).expectProblem(428, "IF_MATCH_REQUIRED");
            dispatcher.with("If-Match", "\"1\"").put(path, places).expectProblem(412, "STALE_VERSION");
        });
        var told = dispatcher.ifMatch(empty).put(path, places).expect(200);
        assertThat(told.etag()).isEqualTo("\"1\"");
        assertThat(told.at("/places").toString()).isEqualTo("[{\"size\":\"20 lb\",\"places\":40},"
                + "{\"size\":\"33.5 lb\",\"places\":0},{\"size\":\"60 lb WC\",\"places\":6}]");
        dispatcher.ifMatch(empty).put(path, places).expectProblem(412, "STALE_VERSION");
        assertThat(dispatcher.ifMatch(told).put(path, Map.of("places", List.of())).expect(200).at("/places")).isEmpty();
        // the site's own version stays
        assertThat(dispatcher.get("/api/sites/" + vehicle).etag()).isEqualTo("\"0\"");
    }

    private static Map<String, @Nullable Object> rack(@Nullable Object size, @Nullable Object places) {
        var entry = new java.util.LinkedHashMap<String, @Nullable Object>();
        entry.put("size", size);
        entry.put("places", places);
        return entry;
    }

    @Test
    void aWrongRackIsRefused() {
        var path = "/api/sites/" + Ways.vehicle(api) + "/rack";
        var depot = "/api/sites/" + given.site(null) + "/rack";
        var clerk = api.as(Role.CLERK).with("If-Match", "\"0\"");
        tables.unchangedBy(() -> {
            assertThat(clerk.put(path, Map.of()).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/places", "MISSING"));
            var wrong = Map.of("places", List.of(rack("20 lb", -1), rack("21 lb", 1), rack(null, null),
                    rack("20lb", 10_001), rack("30 lb", 1), rack("30 LB", 2), rack("unknown size", 1)));
            assertThat(clerk.put(path, wrong).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/places/0/places", "OUT_OF_RANGE", "/places/1/size", "UNKNOWN_SIZE",
                            "/places/2/size", "MISSING", "/places/2/places", "MISSING", "/places/3/places",
                            "OUT_OF_RANGE", "/places/5/size", "TOLD_TWICE", "/places/6/size", "UNKNOWN_SIZE"));
            clerk.put(path, "{\"places\":[null]}").expectProblem(400, "INVALID_INPUT");
            dispatcher.get(depot).expectProblem(409, "NOT_A_VEHICLE");
            dispatcher.get("/api/sites/" + NOBODY + "/rack").expectProblem(404, "NOT_FOUND");
        });
    }
}
