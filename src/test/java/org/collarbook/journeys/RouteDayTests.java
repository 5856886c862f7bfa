package org.collarbook.journeys;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A dispatcher, a driver and a route, over HTTP: opened, planned, printed, driven, and what was not scanned is there the
 * next time. Due months by 49 CFR 180.209(e), good through the month's last day, 180.205(c). Thursdays by the calendar.
 */
@RegisterTest
class RouteDayTests {

    private static final String FIRST = "2026-12-03";
    private static final String SECOND = "2026-12-10";

    private final Api api;
    private final Given given;
    private final TestClock clock;
    private UUID depot;
    private UUID truck;
    private UUID site;
    private String route;

    RouteDayTests(Api api, Given given, TestClock clock) {
        this.api = api;
        this.given = given;
        this.clock = clock;
    }

    @BeforeEach
    void aRouteOfOneStopEveryThursday() {
        depot = given.site(null);
        truck = opened("VEHICLE");
        site = given.site(given.customer());
        var rack = api.as(Role.DISPATCHER).get("/api/sites/" + truck + "/rack").expect(200);
        api.as(Role.DISPATCHER).ifMatch(rack).put("/api/sites/" + truck + "/rack",
                Map.of("places", List.of(Map.of("size", "20 lb", "places", 2)))).expect(200);
        route = api.as(Role.DISPATCHER).post("/api/routes", Map.of("code", "R" + Given.serial(), "name", "Mill valley",
                "depot", depot, "vehicle", truck, "stops", List.of(site), "visits",
                Map.of("rule", "FREQ=WEEKLY;BYDAY=TH", "from", FIRST, "onHolidays", true))).expect(201).id();
    }

    private UUID opened(String kind) {
        var body = Given.depot();
        body.put("kind", kind);
        return UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
    }

    /** Twelve years from the month of manufacture on, 49 CFR 180.209(e). */
    private UUID at(UUID place, String manufactured) {
        var body = Given.cylinder();
        body.put("manufactured", manufactured);
        var id = given.registered(body);
        given.moved(id, place, "2026-11-20T15:00:00Z");
        return id;
    }

    private Answer list(String visit) {
        return api.as(Role.DISPATCHER).get("/api/routes/" + route + "/pull-list?visit=" + visit).expect(200);
    }

    private static Map<UUID, String> reasons(Answer list) {
        var reasons = new HashMap<UUID, String>();
        list.at("/stops").forEach(stop -> stop.at("/containers").forEach(one -> reasons
                .put(UUID.fromString(one.at("/id").asString()), one.at("/reason/code").asString())));
        return reasons;
    }

    private Answer swap(Map<String, Object> more) {
        var body = new LinkedHashMap<String, Object>(Map.of("site", site, "vehicle", truck, "occurredAt",
                "2026-12-03T16:00:00Z"));
        body.putAll(more);
        return api.as(Role.DISPATCHER).with("Idempotency-Key", "swap-" + Given.serial()).post("/api/swaps", body);
    }

    @Test
    void aSwapShrinksTheListAndWhatWasNotScannedIsThereTheNextTime() {
        var taken = at(site, "2014-05");
        var forgotten = at(site, "2014-06");
        var fresh = at(truck, "2020-01");
        assertThat(reasons(list(FIRST))).containsOnlyKeys(taken, forgotten);
        assertThat(list(FIRST).at("/sizes/0/load").asInt()).isEqualTo(2);
        clock.set(Instant.parse("2026-12-03T17:00:00Z"));
        swap(Map.of("out", Map.of("containerId", taken), "in", Map.of("containerId", fresh))).expect(201);
        assertThat(reasons(list(FIRST))).containsOnlyKeys(forgotten);
        assertThat(reasons(list(SECOND))).containsOnlyKeys(forgotten);
        assertThat(api.as(Role.FILLER).get("/api/containers/" + taken + "/movements").text("/items/0/toSite"))
                .isEqualTo(truck.toString());
        assertThat(api.as(Role.FILLER).get("/api/containers/" + fresh + "/movements").text("/items/0/toSite"))
                .isEqualTo(site.toString());
    }

    @Test
    void anOverdueReplacementIsRefusedAndListedWhenItWasLeftAllTheSame() {
        var taken = at(site, "2014-05");
        var overdue = at(truck, "2013-05");
        clock.set(Instant.parse("2026-12-03T17:00:00Z"));
        var both = Map.<String, Object>of("out", Map.of("containerId", taken), "in", Map.of("containerId", overdue));
        var refused = swap(both).expect(409);
        assertThat(refused.at("/reasons").findValuesAsString("code")).contains("OVERDUE");
        assertThat(reasons(list(SECOND))).containsOnlyKeys(taken);
        var happened = new LinkedHashMap<>(both);
        happened.put("happened", true);
        swap(happened).expect(201);
        assertThat(reasons(list(SECOND))).isEqualTo(Map.of(overdue, "OVERDUE"));
    }

    /** Good through 2027-02-28: three at a rack of two and a shop of one a week come on three Thursdays. */
    @Test
    void theListFollowsTheAcceptedPlanUntilADueMonthMoves() throws InterruptedException {
        var all = List.of(at(site, "2015-02"), at(site, "2015-02"), at(site, "2015-02"));
        var dispatcher = api.as(Role.DISPATCHER);
        var plan = dispatcher.post("/api/pull-plans", Map.of("months", 6, "depot", depot, "shop", Map.of("perWeek", 1)))
                .expect(202).id();
        Answer made = dispatcher.get("/api/pull-plans/" + plan);
        for (int i = 0; i < 1800 && !made.text("/status").equals("DONE"); i++) {
            Thread.sleep(100);
            made = dispatcher.get("/api/pull-plans/" + plan);
        }
        assertThat(made.text("/status")).as(made.body()).isEqualTo("DONE");
        var visits = new LinkedHashMap<UUID, String>();
        dispatcher.get("/api/pull-plans/" + plan + "/lines").at("/items").forEach(line -> visits
                .put(UUID.fromString(line.at("/containerId").asString()), line.at("/visit").asString()));
        assertThat(visits.values()).containsExactlyInAnyOrder("2027-02-11", "2027-02-18", "2027-02-25");
        assertThat(reasons(list("2027-02-11"))).isEmpty();
        dispatcher.post("/api/pull-plans/" + plan + "/acceptance", Map.of()).expect(201);
        var first = all.stream().filter(id -> visits.get(id).equals("2027-02-11")).findFirst().orElseThrow();
        var second = all.stream().filter(id -> visits.get(id).equals("2027-02-18")).findFirst().orElseThrow();
        assertThat(reasons(list("2027-02-04"))).isEmpty();
        assertThat(reasons(list("2027-02-11"))).isEqualTo(Map.of(first, "PLANNED"));
        assertThat(list("2027-02-11").text("/plan/id")).isEqualTo(plan);
        assertThat(list("2027-02-11").text("/stops/0/containers/0/reason/text"))
                .isEqualTo("Plan " + made.text("/number")
                        + " brings it back on the visit of 2027-02-11. Its last day is 2027-02-28.");
        // not scanned, so it is there the next time
        assertThat(reasons(list("2027-02-18"))).isEqualTo(Map.of(first, "PLANNED", second, "PLANNED"));
        // the rule comes first: none would last until the visit of March
        assertThat(reasons(list("2027-02-25")).values()).containsExactly("DUE_BEFORE", "DUE_BEFORE", "DUE_BEFORE");
        api.as(Role.YARD).post("/api/containers/" + first + "/requalifications",
                Map.of("performedOn", "2026-11-25", "requalifier", requalifier(), "operator", "M. Holt", "method",
                        "EXTERNAL_VISUAL", "owner", "the distributor", "coating", "painted, whole", "visual",
                        Map.of("items", List.of(Map.of("item", "DENTS", "finding", "SATISFACTORY")))))
                .expect(201);
        assertThat(reasons(list("2027-02-18"))).isEqualTo(Map.of(second, "PLANNED"));
    }

    private String requalifier() {
        var rin = "C" + (100 + Integer.parseInt(Given.serial().replaceAll(".*-", "")) % 900);
        api.as(Role.CLERK).post("/api/requalifiers", Map.of("rin", rin, "name", "Bench East", "approval",
                Map.of("from", "2024-01-01", "expires", LocalDate.of(2028, 12, 31).toString())));
        return rin;
    }

    @Test
    void whatAnotherPlaceClaimsIsShownWithBothClaims() {
        var disputed = at(site, "2020-01");
        api.as(Role.YARD).post("/api/sightings",
                Map.of("containerId", disputed, "site", depot, "occurredAt", "2026-11-24T15:00:00Z")).expect(201);
        var list = list(FIRST);
        assertThat(reasons(list)).isEmpty();
        assertThat(list.text("/placeDisputed/0/id")).isEqualTo(disputed.toString());
        var claims = new ArrayList<String>();
        list.at("/placeDisputed/0/claims").forEach(claim -> claims
                .add(claim.at("/site/id").asString() + " " + claim.at("/recorded").asBoolean()));
        assertThat(claims).containsExactly(site + " true", depot + " false");
    }

    @Test
    void aDisputedOneTellsWhateverIsDueAtEachPlaceThatClaimsIt() {
        var overdue = at(site, "2013-05");
        api.as(Role.YARD).post("/api/sightings",
                Map.of("containerId", overdue, "site", depot, "occurredAt", "2026-11-24T15:00:00Z")).expect(201);
        var seenAt = api.as(Role.DISPATCHER).get("/api/pull-list?site=" + depot).expect(200);
        assertThat(seenAt.text("/placeDisputed/0/status")).isEqualTo("OVERDUE");
        assertThat(seenAt.at("/placeDisputed/0/check").toString()).contains("put nothing in until that is settled",
                "do not top it off");
        assertThat(api.as(Role.DISPATCHER).get("/api/pull-list?format=csv&site=" + depot).expect(200).body())
                .contains("LOOK_INTO", "PLACE_DISPUTED", overdue.toString());
        assertThat(api.as(Role.DISPATCHER).get("/api/pull-list?format=ics&site=" + site).expect(200).body())
                .contains("1 in dispute");
        // where it is recorded it is on the list, and it is no stock of the depot's
        assertThat(reasons(list(FIRST))).isEqualTo(Map.of(overdue, "OVERDUE"));
    }

    @Test
    void whatIsLostIsOnNoListUntilSomebodySeesIt() {
        var lost = at(site, "2013-05");
        clock.set(Instant.parse("2026-11-25T12:00:00Z"));
        api.as(Role.YARD).post("/api/containers/" + lost + "/holds",
                Map.of("reason", "LOST", "occurredAt", "2026-11-23T15:00:00Z")).expect(201);
        assertThat(reasons(list(FIRST))).isEmpty();
        api.as(Role.YARD).post("/api/sightings",
                Map.of("containerId", lost, "site", site, "occurredAt", "2026-11-24T15:00:00Z")).expect(201);
        assertThat(reasons(list(FIRST))).isEqualTo(Map.of(lost, "ON_HOLD"));
    }

    @Test
    void aTankIsNoSwap() {
        var tank = Given.cylinder();
        tank.put("kind", "STATIONARY_TANK");
        tank.put("specification", "ASME");
        tank.put("waterCapacity", "500 gal");
        var id = given.registered(tank);
        given.moved(id, site, "2026-11-20T15:00:00Z");
        clock.set(Instant.parse("2026-12-03T17:00:00Z"));
        swap(Map.of("out", Map.of("containerId", id))).expectProblem(409, "NOT_FOR_THIS_KIND");
    }

    @Test
    void anIdIsOneRoutesAloneWhateverOthersAreCalled() {
        api.as(Role.DISPATCHER).post("/api/routes", Map.of("code", route, "name", "Not this one", "depot", depot,
                "stops", List.of(), "visits",
                Map.of("rule", "FREQ=DAILY", "from", FIRST, "onHolidays", true))).expect(201);
        assertThat(list(FIRST).text("/asked/title")).endsWith("Mill valley");
        var body = Given.depot();
        body.put("code", depot.toString().substring(0, 36));
        api.as(Role.CLERK).post("/api/sites", body).expect(201);
        assertThat(api.as(Role.DISPATCHER).get("/api/pull-list?site=" + depot).expect(200).text("/stops/0/site/id"))
                .isEqualTo(depot.toString());
    }

    @Test
    void theSameListIsPrintedAndPutIntoACalendar() throws IOException {
        var taken = at(site, "2014-05");
        var serial = api.as(Role.CLERK).get("/api/containers/" + taken).text("/marks/serial/value");
        var path = "/api/routes/" + route + "/pull-list?visit=" + FIRST;
        var sheet = api.as(Role.DISPATCHER).with("Accept", "application/pdf").get(path).expect(200);
        assertThat(sheet.contentType()).startsWith("application/pdf");
        try (var document = Loader.loadPDF(sheet.bytes())) {
            assertThat(new PDFTextStripper().getText(document)).contains("Thursday, December 3, 2026", serial,
                    "OVERDUE");
        }
        var calendar = api.as(Role.DISPATCHER).get(path + "&format=ics").expect(200);
        assertThat(calendar.contentType()).startsWith("text/calendar");
        assertThat(calendar.body()).startsWith("BEGIN:VCALENDAR\r\n").contains("DTSTART;VALUE=DATE:20261203\r\n");
        assertThat(api.as(Role.DISPATCHER).get("/api/pull-list?site=" + site + "&format=pdf").expect(200)
                .contentType()).startsWith("application/pdf");
        api.as(Role.DISPATCHER).with("Accept", "application/pdf").get("/api/routes/none/pull-list").expect(404);
    }
}
