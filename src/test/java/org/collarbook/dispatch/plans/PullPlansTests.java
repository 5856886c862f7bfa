package org.collarbook.dispatch.plans;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Plans from the request to their acceptance, over HTTP; the days are Wednesdays and worked out by the calendar. */
@RegisterTest
class PullPlansTests {

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;
    private final Tables tables;
    private final TestClock clock;

    PullPlansTests(Api api, Given given, JdbcClient jdbc, Tables tables, TestClock clock) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
        this.tables = tables;
        this.clock = clock;
    }

    private PlanFixture fixture() {
        return new PlanFixture(api, given, jdbc);
    }

    private Answer get(String path) {
        return api.as(Role.DISPATCHER).get(path).expect(200);
    }

    private Map<String, Integer> byVisit(String plan) {
        var visits = new TreeMap<String, Integer>();
        get("/api/pull-plans/" + plan + "/lines").at("/items")
                .forEach(line -> visits.merge(line.at("/visit").asString(), 1, Integer::sum));
        return visits;
    }

    private static PlanFixture fiveDueInFebruary(PlanFixture fixture) {
        var site = fixture.customerSite();
        fixture.route(fixture.vehicle(4), site);
        for (int i = 0; i < 5; i++) {
            fixture.cylinder(site, "2015-02");
        }
        return fixture;
    }

    /** Good through 2027-02-28; the Wednesdays before are 24, 17 and 10 February, 4, 11 and 18 days earlier. */
    @Test
    void aPlanIsMadeInTheBackgroundAndTellsWhatItComesTo() {
        var fixture = fiveDueInFebruary(fixture());
        var plan = fixture.planned(fixture.request(2));
        assertThat(plan.text("/status")).as(plan.body()).isEqualTo("DONE");
        assertThat(byVisit(plan.id())).isEqualTo(Map.of("2027-02-10", 1, "2027-02-17", 2, "2027-02-24", 2));
        assertThat(plan.at("/progress/cylindersRead").asInt()).isEqualTo(5);
        assertThat(plan.at("/progress/linesWritten").asInt()).isEqualTo(5);
        assertThat(plan.at("/summary/gap").asLong(-1)).isZero();
        assertThat(plan.at("/summary/plan/wastedDays").asInt()).isEqualTo(2 * 4 + 2 * 11 + 18);
        assertThat(plan.at("/summary/plan/peakWeek").asInt()).isEqualTo(2);
        assertThat(plan.at("/summary/lastVisitBefore/wastedDays").asInt()).isEqualTo(5 * 4);
        assertThat(plan.at("/summary/lastVisitBefore/peakWeek").asInt()).isEqualTo(5);
        assertThat(plan.at("/summary/lastVisitBefore/weeksOverCapacity").asInt()).isEqualTo(1);
        assertThat(plan.at("/summary/lastVisitBefore/racksOverCapacity").asInt()).isEqualTo(1);
        assertThat(plan.text("/inputHash")).startsWith("sha256:");
        var again = fixture.planned(fixture.request(2));
        assertThat(again.text("/resultHash")).isEqualTo(plan.text("/resultHash"));
        assertThat(again.text("/inputHash")).isEqualTo(plan.text("/inputHash"));
        assertThat(again.at("/number").asInt()).isGreaterThan(plan.at("/number").asInt());
    }

    @Test
    void linesRemainderWeeksAndPlansComeByPages() {
        var fixture = fiveDueInFebruary(fixture());
        var request = fixture.request(1);
        request.put("months", 3);
        request.put("shop", Map.of("perWeek", 0, "weeks", List.of(Map.of("week", "2027-W08", "capacity", 3))));
        var plan = fixture.planned(request);
        assertThat(byVisit(plan.id())).isEqualTo(Map.of("2027-02-24", 3));
        var first = get("/api/pull-plans/" + plan.id() + "/lines?size=2");
        var second = get("/api/pull-plans/" + plan.id() + "/lines?size=2&cursor=" + first.text("/next"));
        assertThat(first.at("/items")).hasSize(2);
        assertThat(second.at("/items")).hasSize(1);
        var left = get("/api/pull-plans/" + plan.id() + "/remainder");
        assertThat(left.at("/items")).hasSize(2)
                .allSatisfy(one -> assertThat(one.at("/reason").asString()).isEqualTo("SHOP_FULL"));
        assertThat(left.text("/items/0/lastVisit")).isEqualTo("2027-02-24");
        assertThat(get("/api/pull-plans/" + plan.id() + "/remainder?reason=RACK_FULL").at("/items")).isEmpty();
        assertThat(plan.at("/summary/missing/shop").asInt()).isEqualTo(2);
        var week = new ArrayList<>(get("/api/pull-plans/" + plan.id() + "/weeks").at("/weeks").values()).stream()
                .filter(one -> one.at("/week").asString().equals("2027-W08")).findAny().orElseThrow();
        assertThat(List.of(week.at("/plan").asInt(), week.at("/lastVisitBefore").asInt(), week.at("/capacity").asInt()))
                .containsExactly(3, 5, 3);
        var newest = get("/api/pull-plans?size=1");
        assertThat(newest.text("/items/0/id")).isEqualTo(plan.id());
        assertThat(get("/api/pull-plans?size=1&cursor=" + newest.text("/next")).at("/items/0/number").asInt())
                .isLessThan(plan.at("/number").asInt());
    }

    @Test
    void whatIsNotKnownIsLeftOverAndWhatIsHeldComesFirst() {
        var fixture = fixture();
        var known = fixture.customerSite();
        var noVehicle = fixture.customerSite();
        var noRack = fixture.customerSite();
        fixture.route(fixture.vehicle(10), known);
        fixture.route(null, noVehicle);
        fixture.route(fixture.vehicle(-1), noRack);
        var held = fixture.cylinder(known, "2024-01");
        api.as(Role.YARD)
                .post("/api/containers/" + held + "/holds", Map.of("reason", "LEAKING", "note", "at the valve"))
                .expect(201);
        var overdue = fixture.cylinder(known, "2010-05");
        var unread = Given.cylinder();
        unread.remove("collarRead");
        var undetermined = fixture.at(known, unread);
        var withoutVehicle = fixture.cylinder(noVehicle, "2015-02");
        var withoutRack = fixture.cylinder(noRack, "2015-02");
        fixture.cylinder(known, "2024-02");
        var plan = fixture.planned(fixture.request(9));
        var lines = new LinkedHashMap<String, String>();
        get("/api/pull-plans/" + plan.id() + "/lines").at("/items").forEach(line -> lines.put(
                line.at("/containerId").asString(), line.at("/visit").asString() + " " + line.at("/why").asString()));
        assertThat(lines).isEqualTo(Map.of(held.toString(), "2026-11-25 OUT_OF_SERVICE", overdue.toString(),
                "2026-11-25 OVERDUE"));
        var left = new LinkedHashMap<String, String>();
        get("/api/pull-plans/" + plan.id() + "/remainder").at("/items").forEach(
                one -> left.put(one.at("/containerId").asString(), one.at("/reason").asString()));
        assertThat(left).isEqualTo(Map.of(undetermined.toString(), "UNDETERMINED", withoutVehicle.toString(),
                "NO_VEHICLE", withoutRack.toString(), "RACK_NOT_KNOWN"));
        assertThat(plan.at("/summary/notNeededYet").asInt()).isEqualTo(1);
        assertThat(plan.at("/summary/remainder").asInt()).isEqualTo(3);
    }

    /** 04:30 in UTC is half past ten in the evening before in Chicago: a visit of that day is not over. */
    @Test
    void aPlanBeginsOnTheDayAtTheDepots() {
        var fixture = fixture();
        fixture.route(null, fixture.customerSite());
        clock.set(Instant.parse("2026-12-01T04:30:00Z"));
        var request = fixture.request(1);
        assertThat(fixture.planned(request).text("/from")).isEqualTo("2026-11-30");
        request.remove("depot");
        assertThat(fixture.planned(request).text("/from")).isEqualTo("2026-11-30");
        request.put("from", "2026-11-29");
        api.as(Role.DISPATCHER).post("/api/pull-plans", request).expectProblem(400, "INVALID_INPUT");
    }

    /** All routes: a site that none calls at is seen too. */
    @Test
    void aPlanOfAllRoutesTellsOfSitesWithoutOne() {
        var fixture = fixture();
        var one = fixture.cylinder(fixture.customerSite(), "2015-02");
        var request = fixture.request(5);
        request.remove("depot");
        var plan = fixture.planned(request);
        assertThat(plan.text("/status")).as(plan.body()).isEqualTo("DONE");
        var reason = jdbc.sql("select reason from pull_plan_remainder where plan_id = ?::uuid and container_id = ?")
                .params(plan.id(), one).query(String.class).single();
        assertThat(reason).isEqualTo("NO_ROUTE");
    }

    /** The smaller shop pulls three a week or two earlier; the rack takes four, so one of five is earlier at any rate. */
    @Test
    void twoPlansAreCompared() {
        var fixture = fiveDueInFebruary(fixture());
        var small = fixture.planned(fixture.request(2));
        var large = fixture.planned(fixture.request(9));
        assertThat(byVisit(large.id())).isEqualTo(Map.of("2027-02-17", 1, "2027-02-24", 4));
        var compared = get("/api/pull-plans/" + small.id() + "/comparison?with=" + large.id() + "&size=2");
        assertThat(compared.at("/counts/same").asInt() + compared.at("/counts/earlier").asInt()).isEqualTo(5);
        assertThat(compared.at("/counts/later").asInt()).isZero();
        assertThat(compared.at("/counts/onlyHere").asInt()).isZero();
        int changed = compared.at("/counts/earlier").asInt();
        assertThat(changed).isGreaterThanOrEqualTo(2);
        assertThat(compared.at("/changed/items")).hasSize(2)
                .allSatisfy(one -> assertThat(one.at("/change").asString()).isEqualTo("EARLIER"));
        var back = get("/api/pull-plans/" + large.id() + "/comparison?with=" + small.id());
        assertThat(back.at("/counts/later").asInt()).isEqualTo(changed);
        assertThat(back.at("/changed/items")).hasSize(changed);
        var none = fixture.planned(fixture.request(0));
        assertThat(get("/api/pull-plans/" + none.id() + "/comparison?with=" + large.id()).at("/counts/onlyThere")
                .asInt()).isEqualTo(5);
    }

    @Test
    void thePlanAcceptedLastIsInForceOnItsRoutes() {
        var fixture = fiveDueInFebruary(fixture());
        var first = fixture.planned(fixture.request(2));
        var second = fixture.planned(fixture.request(3));
        assertThat(inForce(fixture)).isEmpty();
        var path = "/api/pull-plans/%s/acceptance";
        var accepted = api.as(Role.DISPATCHER).with("Idempotency-Key", UUID.randomUUID().toString());
        accepted.post(path.formatted(first.id()), "").expect(201);
        accepted.post(path.formatted(first.id()), "").expect(201);
        assertThat(jdbc.sql("select count(*) from pull_plan_acceptance where plan_id = ?::uuid").param(first.id())
                .query(Long.class).single()).as("a repeat").isEqualTo(1);
        assertThat(inForce(fixture)).containsExactly(UUID.fromString(first.id()));
        api.as(Role.CLERK).post(path.formatted(second.id()), "").expect(201);
        assertThat(inForce(fixture)).containsExactly(UUID.fromString(second.id()));
        assertThat(get("/api/pull-plans/" + second.id()).at("/routesInForce").asInt()).isEqualTo(1);
        assertThat(get("/api/pull-plans/" + first.id()).at("/routesInForce").asInt()).isZero();
        api.as(Role.DISPATCHER).post(path.formatted(first.id()), "").expect(201);
        assertThat(inForce(fixture)).as("an older plan accepted again").containsExactly(UUID.fromString(first.id()));
    }

    /** A plan of later days leaves the days before it to the one that was accepted earlier. */
    @Test
    void aPlanIsInForceWhileADayOfItIsLeftToIt() {
        var fixture = fiveDueInFebruary(fixture());
        var whole = fixture.planned(fixture.request(2));
        var request = fixture.request(3);
        request.put("from", "2027-01-01");
        var later = fixture.planned(request);
        var dispatcher = api.as(Role.DISPATCHER);
        dispatcher.post("/api/pull-plans/" + whole.id() + "/acceptance", "").expect(201);
        dispatcher.post("/api/pull-plans/" + later.id() + "/acceptance", "").expect(201);
        assertThat(inForce(fixture)).containsExactlyInAnyOrder(UUID.fromString(whole.id()),
                UUID.fromString(later.id()));
        request.put("from", whole.text("/from"));
        request.put("months", 60);
        var all = fixture.planned(request);
        dispatcher.post("/api/pull-plans/" + all.id() + "/acceptance", "").expect(201);
        assertThat(inForce(fixture)).containsExactly(UUID.fromString(all.id()));
    }

    private List<UUID> inForce(PlanFixture fixture) {
        return jdbc.sql("""
                select f.plan_id from pull_plan_in_force f join route r on r.id = f.route_id where r.depot_id = ?""")
                .param(fixture.depot).query(UUID.class).list();
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '\'', value = {
            "'{}', /shop=MISSING",
            "'{\"shop\":{}}', /shop/perWeek=MISSING",
            "'{\"shop\":{\"perWeek\":-1}}', /shop/perWeek=OUT_OF_RANGE",
            "'{\"shop\":{\"perWeek\":1000001}}', /shop/perWeek=OUT_OF_RANGE",
            "'{\"shop\":{\"perWeek\":1.5}}', /shop/perWeek=OUT_OF_RANGE",
            "'{\"shop\":{\"perWeek\":\"many\"}}', /shop/perWeek=WRONG_TYPE",
            "'{\"shop\":{\"perWeek\":5},\"months\":0}', /months=OUT_OF_RANGE",
            "'{\"shop\":{\"perWeek\":5},\"months\":61}', /months=OUT_OF_RANGE",
            "'{\"shop\":{\"perWeek\":5},\"from\":\"2026-11-23\"}', /from=OUT_OF_RANGE",
            "'{\"shop\":{\"perWeek\":5},\"from\":\"2999-01-01\"}', /from=OUT_OF_RANGE",
            "'{\"shop\":{\"perWeek\":5},\"from\":\"soon\"}', /from=WRONG_TYPE",
            "'{\"shop\":{\"perWeek\":5},\"depot\":\"00000000-0000-7000-8000-000000000000\"}', /depot=UNKNOWN_DEPOT",
            "'{\"shop\":{\"perWeek\":5,\"weeks\":[{\"week\":\"2027-W53\",\"capacity\":1}]}}', /shop/weeks/0/week=INVALID_WEEK",
            "'{\"shop\":{\"perWeek\":5,\"weeks\":[{\"week\":\"2026-W52\"}]}}', /shop/weeks/0/capacity=MISSING",
            "'{\"shop\":{\"perWeek\":5,\"weeks\":[null]}}', /shop/weeks/0=MISSING",
            "'{\"shop\":{\"perWeek\":5,\"weeks\":[{\"week\":\"2026-W52\",\"capacity\":1},{\"week\":\"2026-W52\",\"capacity\":1}]}}', /shop/weeks/1/week=TOLD_TWICE",
            "'{\"shop\":{\"perWeek\":5},\"rate\":1}', /rate=UNKNOWN_FIELD"})
    void whatCannotBePlannedIsRefusedAndStoresNothing(String body, String error) {
        tables.unchangedBy(() -> {
            var answer = api.as(Role.DISPATCHER).post("/api/pull-plans", body).expectProblem(400, "INVALID_INPUT");
            assertThat(answer.errors().toString()).isEqualTo("{" + error + "}");
        });
    }

    @Test
    void allWrongInputsAreToldAtOnce() {
        var answer = api.as(Role.DISPATCHER).post("/api/pull-plans", """
                {"months": 99, "depot": "00000000-0000-7000-8000-000000000000",
                 "shop": {"perWeek": -3, "weeks": [{"week": "never", "capacity": -1}, {"capacity": 2}]}}""");
        assertThat(answer.expectProblem(400, "INVALID_INPUT").errors().keySet()).containsExactlyInAnyOrder("/months",
                "/depot", "/shop/perWeek", "/shop/weeks/0/week", "/shop/weeks/0/capacity", "/shop/weeks/1/week");
    }

    @Test
    void aRepeatGetsTheFirstAnswerAndNoSecondPlan() {
        var fixture = fixture();
        var session = api.as(Role.DISPATCHER).with("Idempotency-Key", UUID.randomUUID().toString());
        var first = session.post("/api/pull-plans", fixture.request(3)).expect(202);
        fixture.over(first.header("Location"));
        var again = session.post("/api/pull-plans", fixture.request(3)).expect(202);
        assertThat(again.header("Location")).isEqualTo(first.header("Location"));
        session.post("/api/pull-plans", fixture.request(4)).expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
    }

    @Test
    void whatDoesNotExistOrIsNoCursorIsRefused() {
        var nothing = "/api/pull-plans/00000000-0000-7000-8000-000000000000";
        for (var path : List.of("", "/lines", "/remainder", "/weeks", "/comparison?with=" + UUID.randomUUID())) {
            api.as(Role.DISPATCHER).get(nothing + path).expectProblem(404, "NOT_FOUND");
        }
        for (var command : List.of("/cancellation", "/acceptance")) {
            api.as(Role.DISPATCHER).post(nothing + command, "").expectProblem(404, "NOT_FOUND");
        }
        var fixture = fixture();
        var plan = fixture.planned(fixture.request(1));
        for (var path : List.of("/lines?cursor=nonsense", "/lines?cursor=eB95", "/remainder?cursor=eA",
                "/lines?size=0")) {
            api.as(Role.DISPATCHER).get("/api/pull-plans/" + plan.id() + path).expectProblem(400, "INVALID_INPUT");
        }
        api.as(Role.DISPATCHER).get("/api/pull-plans?cursor=eA").expectProblem(400, "INVALID_INPUT");
        api.as(Role.DISPATCHER).get("/api/pull-plans/" + plan.id() + "/remainder?reason=WHY")
                .expectProblem(400, "INVALID_INPUT");
    }
}
