package org.collarbook.compliance.swaps;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** One container taken away at a stop, another one left. */
@RegisterTest
class SwapsTests {

    private static final String NOBODY = "00000000-0000-7000-8000-000000000000";
    private static final String AT = "2026-11-25T10:00:00Z";

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final JdbcClient jdbc;

    private final UUID farm;
    private final UUID truck;
    private final UUID out;
    private final UUID in;

    SwapsTests(Api api, Given given, Tables tables, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.jdbc = jdbc;
        farm = given.site(given.customer());
        var body = Given.depot();
        body.put("kind", "VEHICLE");
        truck = UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
        // of May 2004: overdue since June 2016 or before
        out = given.registered();
        given.moved(out, farm, "2026-04-20T09:00:00Z");
        in = fresh();
        given.moved(in, truck, "2026-11-25T07:00:00Z");
    }

    /** In date through June 2032. */
    private UUID fresh() {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        return given.registered(body);
    }

    private static Map<String, @Nullable Object> id(UUID container) {
        return new LinkedHashMap<>(Map.of("containerId", container));
    }

    private Map<String, @Nullable Object> swap() {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("site", farm);
        body.put("vehicle", truck);
        body.put("out", id(out));
        body.put("in", id(in));
        body.put("occurredAt", AT);
        return body;
    }

    private Answer post(Map<String, @Nullable Object> body) {
        return api.as(Role.DISPATCHER).post("/api/swaps", body);
    }

    private Answer read(String path) {
        return api.as(Role.CLERK).get(path).expect(200);
    }

    private UUID place(UUID container) {
        return jdbc.sql("select site_id from placement where container_id = ?").param(container).query(UUID.class)
                .single();
    }

    private static List<String> codes(Answer answer, String list) {
        return answer.at(list).findValuesAsString("code");
    }

    @Test
    void bothAreMovedInOneStep() {
        var answer = post(swap()).expect(201);
        assertThat(answer.at("/allowed").booleanValue()).isTrue();
        assertThat(answer.at("/reasons")).isEmpty();
        assertThat(answer.at("/told")).isEmpty();
        assertThat(place(out)).isEqualTo(truck);
        assertThat(place(in)).isEqualTo(farm);
        var movements = read("/api/containers/" + out + "/movements");
        assertThat(movements.text("/items/0/id")).isEqualTo(answer.text("/out/movementId"));
        assertThat(movements.text("/items/0/fromSite")).isEqualTo(farm.toString());
        assertThat(read("/api/containers/" + in + "/movements").text("/items/0/fromSite")).isEqualTo(truck.toString());
        var done = read(answer.header("Location"));
        assertThat(done.at("/items")).hasSize(1);
        assertThat(done.text("/items/0/id")).isEqualTo(answer.id());
        assertThat(done.text("/items/0/out")).isEqualTo(out.toString());
        assertThat(done.text("/items/0/in")).isEqualTo(in.toString());
        for (var chain : Map.of(out, "SWAPPED_OUT", in, "SWAPPED_IN").entrySet()) {
            assertThat(read("/api/containers/" + chain.getKey() + "/history").at("/items").findValuesAsString("kind"))
                    .containsOnlyOnce(chain.getValue());
            assertThat(read("/api/audit/verification?container=" + chain.getKey()).at("/whole").asBoolean()).isTrue();
        }
        var list = api.as(Role.DISPATCHER).get("/api/pull-list?site=" + farm + "&before=2026-12-25").expect(200);
        assertThat(list.body()).doesNotContain(out.toString(), in.toString());
    }

    @Test
    void eachIsNamedByTagOrSerial() {
        var tagged = Given.cylinder();
        tagged.put("tag", "CB-" + Given.serial());
        tagged.put("manufactured", "6-20");
        var id = given.registered(tagged);
        given.moved(id, truck, "2026-11-25T07:00:00Z");
        var body = swap();
        body.put("in", Map.of("tag", String.valueOf(tagged.get("tag"))));
        body.put("out", Map.of("serial", read("/api/containers/" + out).text("/serial"), "specification",
                "DOT-4BA240", "maker", "QX"));
        var answer = post(body).expect(201);
        assertThat(answer.text("/in/containerId")).isEqualTo(id.toString());
        assertThat(answer.text("/out/containerId")).isEqualTo(out.toString());
    }

    @Test
    void oneOfTheTwoMayBeAbsent() {
        var taken = swap();
        taken.remove("in");
        assertThat(post(taken).expect(201).at("/in").isMissingNode()).isTrue();
        assertThat(place(out)).isEqualTo(truck);
        var left = swap();
        left.remove("out");
        assertThat(post(left).expect(201).at("/out").isMissingNode()).isTrue();
        assertThat(place(in)).isEqualTo(farm);
        assertThat(read("/api/sites/" + farm + "/swaps?size=1").at("/items")).hasSize(1);
    }

    @Test
    void oneThatTheRegisterHasElsewhereIsDisputedAndNothingIsStored() {
        var elsewhere = given.site(null);
        var strange = fresh();
        given.moved(strange, elsewhere, "2026-11-25T07:00:00Z");
        var both = swap();
        both.put("out", id(strange));
        both.put("in", id(out));
        tables.unchangedBy(() -> {
            var refused = post(both).expectProblem(409, "PLACE_DISPUTED");
            assertThat(refused.errors()).isEqualTo(Map.of("/out", "PLACE_DISPUTED", "/in", "PLACE_DISPUTED"));
            assertThat(refused.text("/disputed/0/recordedSite/id")).isEqualTo(elsewhere.toString());
            assertThat(refused.text("/disputed/0/statedSite/id")).isEqualTo(farm.toString());
            both.put("happened", true);
            post(both).expectProblem(409, "PLACE_DISPUTED");
        });
        post(swap()).expect(201);
        tables.unchangedBy(() -> post(swap()).expectProblem(409, "PLACE_DISPUTED"));
    }

    @Test
    void oneThatWasNeverPlacedOrWasSeenThereIsTaken() {
        var body = swap();
        body.put("in", id(fresh()));
        var seen = fresh();
        given.moved(seen, given.site(null), "2026-11-20T09:00:00Z");
        api.as(Role.YARD).post("/api/sightings", Map.of("containerId", seen, "site", farm, "occurredAt",
                "2026-11-25T09:00:00Z")).expect(201);
        body.put("out", id(seen));
        var answer = post(body).expect(201);
        assertThat(answer.at("/out/disputed").booleanValue()).isFalse();
        assertThat(place(seen)).isEqualTo(truck);
    }

    @Test
    void oneThatMustNotBeUsedThereIsRefusedWithAllReasons() {
        var overdue = given.registered();
        given.moved(overdue, truck, "2026-11-25T07:00:00Z");
        api.as(Role.YARD).post("/api/containers/" + overdue + "/holds", Map.of("reason", "DENTED")).expect(201);
        var body = swap();
        body.put("in", id(overdue));
        tables.unchangedBy(() -> {
            var refused = post(body).expectProblem(409, "REPLACEMENT_NOT_ALLOWED");
            assertThat(codes(refused, "/reasons")).contains("OVERDUE", "ON_HOLD");
        });
        body.put("happened", true);
        var answer = post(body).expect(201);
        assertThat(answer.at("/allowed").booleanValue()).isFalse();
        assertThat(codes(answer, "/reasons")).contains("OVERDUE");
        assertThat(read("/api/sites/" + farm + "/swaps").at("/items/0/refusedFor").toString()).contains("OVERDUE");
        var list = api.as(Role.DISPATCHER).get("/api/pull-list?site=" + farm + "&before=2026-12-25").expect(200);
        assertThat(list.body()).contains(overdue.toString());
    }

    @Test
    void oneOfWhichTheHistoryIsNotKnownIsRefused() {
        var body = Given.cylinder();
        body.remove("manufactured");
        body.remove("collarRead");
        var unknown = given.registered(body);
        given.moved(unknown, truck, "2026-11-25T07:00:00Z");
        var swap = swap();
        swap.put("in", id(unknown));
        tables.unchangedBy(() -> assertThat(codes(post(swap).expectProblem(409, "REPLACEMENT_NOT_ALLOWED"),
                "/reasons")).contains("MISSING_REQUALIFICATIONS"));
    }

    /** The truck is in the US, the site where no rule is held. */
    @Test
    void theRulesOfTheSiteAreAsked() {
        var site = Given.depot();
        site.put("jurisdiction", "XX");
        var abroad = UUID.fromString(api.as(Role.CLERK).post("/api/sites", site).expect(201).id());
        var body = swap();
        body.remove("out");
        body.put("site", abroad);
        tables.unchangedBy(() -> assertThat(codes(post(body).expectProblem(409, "REPLACEMENT_NOT_ALLOWED"),
                "/reasons")).contains("NO_RULE_HELD"));
    }

    @Test
    void anotherSizeAndAnEarlyLastDayAreTold() {
        var body = Given.cylinder();
        body.put("manufactured", "12-14");
        body.put("waterCapacity", "239 lb");
        body.put("tare", "TW 70");
        var early = given.registered(body);
        given.moved(early, truck, "2026-11-25T07:00:00Z");
        // in date through December 2026; the farm is visited on 2 and 30 December, and on 27 January
        route("FREQ=WEEKLY;INTERVAL=4;BYDAY=WE", "2026-12-02");
        var swap = swap();
        swap.put("in", id(early));
        var told = post(swap).expect(201);
        assertThat(told.at("/allowed").booleanValue()).isTrue();
        assertThat(codes(told, "/told")).containsExactly("OTHER_SIZE");
        var later = swap();
        later.put("out", id(early));
        later.put("in", id(in));
        later.put("occurredAt", "2026-11-25T11:00:00Z");
        assertThat(codes(post(later).expect(201), "/told")).containsExactly("OTHER_SIZE");
    }

    @Test
    void aLastDayBeforeTheVisitAfterNextIsTold() {
        var body = Given.cylinder();
        body.put("manufactured", "12-14");
        var early = given.registered(body);
        given.moved(early, truck, "2026-11-25T07:00:00Z");
        route("FREQ=WEEKLY;INTERVAL=5;BYDAY=WE", "2026-12-02");
        var swap = swap();
        swap.put("in", id(early));
        var told = post(swap).expect(201);
        assertThat(codes(told, "/told")).containsExactly("DUE_BEFORE_VISITS");
        assertThat(told.text("/told/0/text")).contains("2026-12-31", "2027-01-06");
    }

    private void route(String rule, String from) {
        var id = UUID.randomUUID();
        jdbc.sql("insert into route (id, code, name, depot_id, rule, first_day, on_holidays)"
                + " values (?, ?, 'round', ?, ?, cast(? as date), true)")
                .params(id, "R" + Given.serial(), given.site(null), rule, from).update();
        jdbc.sql("insert into route_stop (route_id, position, site_id) values (?, 1, ?)").params(id, farm).update();
    }

    @Test
    void aRepeatUnderTheSameKeyIsOneSwap() {
        var once = api.as(Role.YARD).with("Idempotency-Key", Given.serial());
        var first = once.post("/api/swaps", swap()).expect(201);
        tables.unchangedBy(() -> assertThat(once.post("/api/swaps", swap()).expect(201).json())
                .isEqualTo(first.json()));
    }

    @Test
    void wrongSwapsAreRefusedByFieldAndCode() {
        tables.unchangedBy(() -> {
            refused(new LinkedHashMap<>(), Map.of("/out", "MISSING", "/occurredAt", "MISSING", "/site", "MISSING",
                    "/vehicle", "MISSING"));
            refused(with("site", NOBODY), Map.of("/site", "UNKNOWN_SITE"));
            refused(with("vehicle", NOBODY), Map.of("/vehicle", "UNKNOWN_SITE"));
            refused(with("vehicle", farm), Map.of("/vehicle", "NOT_A_VEHICLE"));
            refused(with("site", truck), Map.of("/vehicle", "SAME_SITE"));
            refused(with("occurredAt", "2026-11-25T12:05:01Z"), Map.of("/occurredAt", "IN_THE_FUTURE"));
            refused(with("in", id(out)), Map.of("/in", "SAME_CONTAINER"));
            refused(with("in", Map.of()), Map.of("/in/tag", "MISSING"));
            refused(with("in", Map.of("containerId", in, "tag", "X1")), Map.of("/in/containerId", "TOO_MANY"));
            refused(with("out", Map.of("tag", "X1", "serial", "1")), Map.of("/out/tag", "TOO_MANY"));
            refused(with("out", Map.of("containerId", NOBODY)), Map.of("/out/containerId", "UNKNOWN_CONTAINER"));
            refused(with("in", Map.of("containerId", "x")), Map.of("/in/containerId", "WRONG_TYPE"));
            refused(with("why", "so"), Map.of("/why", "UNKNOWN_FIELD"));
            assertThat(post(with("in", Map.of("tag", "NO-SUCH-TAG"))).expectProblem(404, "NOT_FOUND")
                    .text("/pointer")).isEqualTo("/in");
            api.as(Role.YARD).get("/api/sites/" + NOBODY + "/swaps").expectProblem(404, "NOT_FOUND");
            api.as(Role.YARD).get("/api/sites/" + farm + "/swaps?cursor=x").expectProblem(400, "INVALID_INPUT");
        });
    }

    private Map<String, @Nullable Object> with(String field, Object value) {
        var body = swap();
        body.put(field, value);
        return body;
    }

    private void refused(Map<String, @Nullable Object> body, Map<String, String> errors) {
        assertThat(post(body).expectProblem(400, "INVALID_INPUT").errors()).isEqualTo(errors);
    }
}
