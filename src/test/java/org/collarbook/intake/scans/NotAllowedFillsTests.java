package org.collarbook.intake.scans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.intake.scans.Scans.fill;
import static org.collarbook.intake.scans.Scans.line;
import static org.collarbook.intake.scans.Scans.outcomes;
import static org.collarbook.intake.scans.Scans.texts;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * A fill that was not allowed has happened all the same: it is a fact with its reasons and holds the container. The
 * limit of a 20 lb cylinder is 19.99 lb: 47.6 lb of water at 42 %, 49 CFR 173.304a(d)(1). That such a fill holds the
 * container is common practice, no source.
 */
@RegisterTest
class NotAllowedFillsTests {

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;
    private final Scans scans;

    NotAllowedFillsTests(Api api, Given given, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
        this.scans = new Scans(api);
    }

    private UUID with(Consumer<Map<String, @Nullable Object>> change) {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        change.accept(body);
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-04-20T09:00:00Z");
        return id;
    }

    private UUID with(String field, @Nullable Object value) {
        return with(body -> body.put(field, value));
    }

    /** Recorded with the reasons, and held; nothing more may be put in until somebody has looked into it. */
    private Answer notAllowed(Map<String, @Nullable Object> line, String hold, String... codes) {
        var answer = scans.send(line).expect(201);
        assertThat(outcomes(answer)).as(answer.body()).containsExactly("RECORDED_NOT_ALLOWED");
        assertThat(answer.at("/counts/recordedNotAllowed").asInt()).isEqualTo(1);
        assertThat(texts(answer, "/lines/0/reasons", "code")).contains(codes);
        var id = answer.text("/lines/0/containerId");
        var fill = api.as(Role.CLERK).get("/api/containers/" + id + "/fills").expect(200);
        assertThat(fill.text("/items/0/id")).isEqualTo(answer.text("/lines/0/fillId"));
        assertThat(fill.at("/items/0/refusedFor").toString()).contains(codes);
        assertThat(fill.at("/items/0/toldAfterwards").asBoolean()).isTrue();
        var held = api.as(Role.CLERK).get("/api/containers/" + id + "/holds?standing=true").expect(200);
        assertThat(held.text("/items/0/id")).isEqualTo(answer.text("/lines/0/holdId"));
        assertThat(held.text("/items/0/reason")).isEqualTo(hold);
        assertThat(held.text("/items/0/occurredAt")).isEqualTo(line.get("occurredAt"));
        assertThat(held.text("/items/0/note")).contains(answer.text("/lines/0/fillId"), codes[0]);
        var check = api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills",
                Map.of("containerId", id, "filledAt", "2026-11-25T11:59:00Z", "specificGravity", 0.508, "netAfterLb",
                        10,
                        "lookedAt", true));
        assertThat(check.expectProblem(409, "FILL_REFUSED").body()).contains("ON_HOLD");
        assertThat(api.as(Role.CLERK).get("/api/audit/verification?container=" + id).at("/whole").asBoolean()).isTrue();
        return answer;
    }

    @Test
    void overdueOnItsOwnDay() {
        // twelve years of an external visual's clock have run since May 2004: 180.209(e)
        var answer = notAllowed(fill(with("manufactured", "5-04"), "2026-11-20T10:00:00Z"), "FILLED_NOT_ALLOWED",
                "OVERDUE");
        assertThat(answer.text("/lines/0/reasons/0/citation/section")).startsWith("180.209");
        assertThat(jdbc.sql("select count(*) from fill where id = ? and net_lb = 19").param(UUID.fromString(
                answer.text("/lines/0/fillId"))).query(Long.class).single()).isEqualTo(1);
    }

    /** Twelve years from May 2014 end with May 2026: 49 CFR 180.209(e); a fill of then that is told in November was lawful. */
    @ParameterizedTest
    @CsvSource({"2026-05-31T20:00:00Z, RECORDED", "2026-06-01T20:00:00Z, RECORDED_NOT_ALLOWED"})
    void judgedOnTheDayOnWhichItWas(String at, String outcome) {
        assertThat(outcomes(scans.send(fill(with("manufactured", "5-14"), at)).expect(201))).containsExactly(outcome);
    }

    @Test
    void overTheLimit() {
        notAllowed(fill(with("coated", true), "2026-11-20T10:00:00Z", "netAfterLb", 20.5), "OVERFILLED_OR_DISCHARGED",
                "OVER_LIMIT");
        notAllowed(fill(with("coated", true), "2026-11-20T10:00:00Z", "netAfterLb", 20.5, "observedOverfill", true),
                "OVERFILLED_OR_DISCHARGED", "OVER_LIMIT");
        notAllowed(fill(with("manufactured", "5-04"), "2026-11-20T10:00:00Z", "netAfterLb", 20.5),
                "OVERFILLED_OR_DISCHARGED", "OVER_LIMIT", "OVERDUE");
    }

    @Test
    void unknownFacts() {
        notAllowed(fill(with("waterCapacity", null), "2026-11-20T10:00:00Z"), "FILLED_NOT_ALLOWED",
                "MISSING_WATER_CAPACITY");
        notAllowed(fill(with("marksLegible", null), "2026-11-20T10:00:00Z"), "FILLED_NOT_ALLOWED",
                "MISSING_MARKS_LEGIBLE");
    }

    @Test
    void aWeightThatCannotBeToldIsAFactWithoutOne() {
        var scale = notAllowed(fill(with("tare", null), "2026-11-20T10:00:00Z", "netAfterLb", null, "grossLb", 36.5),
                "FILLED_NOT_ALLOWED", "MISSING_TARE");
        var fill = api.as(Role.CLERK).get("/api/containers/" + scale.text("/lines/0/containerId") + "/fills");
        assertThat(fill.at("/items/0/netAfterLb").isMissingNode()).isTrue();
        assertThat(fill.at("/items/0/grossLb").asDouble()).isEqualTo(36.5);
        var meter = fill(with("coated", true), "2026-11-20T10:00:00Z", "netAfterLb", null, "gallonsAdded", 4, "heelLb",
                0,
                "specificGravity", null);
        notAllowed(meter, "FILLED_NOT_ALLOWED", "MISSING_SPECIFIC_GRAVITY");
    }

    @Test
    void aProductThatNobodyDeclared() {
        var answer = notAllowed(fill(with("coated", true), "2026-11-20T10:00:00Z", "specificGravity", null, "product",
                "NOBODY'S GAS"), "FILLED_NOT_ALLOWED", "PRODUCT_UNKNOWN", "MISSING_SPECIFIC_GRAVITY");
        assertThat(api.as(Role.CLERK).get("/api/containers/" + answer.text("/lines/0/containerId") + "/holds")
                .text("/items/0/note")).contains("NOBODY'S GAS");
        notAllowed(fill(with("coated", true), "2026-11-20T10:00:00Z", "product", "NOBODY'S GAS"), "FILLED_NOT_ALLOWED",
                "PRODUCT_UNKNOWN");
        notAllowed(fill(with("coated", true), "2026-11-20T10:00:00Z", "specificGravity", 0.05), "FILLED_NOT_ALLOWED",
                "SPECIFIC_GRAVITY_OUT_OF_TABLE");
    }

    /** 49 CFR 173.301(a)(2). */
    @Test
    void oneThatNobodyLookedAt() {
        var unseen = notAllowed(fill(with("coated", true), "2026-11-20T10:00:00Z", "lookedAt", false),
                "FILLED_NOT_ALLOWED", "NOT_LOOKED_AT");
        assertThat(unseen.text("/lines/0/reasons/0/citation/section")).isEqualTo("173.301(a)(2)");
        notAllowed(fill(with("coated", true), "2026-11-20T10:00:00Z", "lookedAt", null), "FILLED_NOT_ALLOWED",
                "NOT_LOOKED_AT");
    }

    @Test
    void aHoldThatStoodAtThatMoment() {
        var id = with("coated", true);
        var answer = scans.send(fill(id, "2026-11-20T09:00:00Z"), fill(id, "2026-11-20T11:00:00Z"),
                line("HOLD", id, "2026-11-20T10:00:00Z", "reason", "ILLEGIBLE_MARKS")).expect(201);
        assertThat(outcomes(answer)).containsExactly("RECORDED", "RECORDED_NOT_ALLOWED", "RECORDED");
        assertThat(texts(answer, "/lines/1/reasons", "code")).containsExactly("ON_HOLD");
        // told later still: before it was placed, and after
        notAllowed(fill(id, "2026-11-20T12:00:00Z"), "FILLED_NOT_ALLOWED", "ON_HOLD");
        assertThat(outcomes(scans.send(fill(id, "2026-11-20T08:00:00Z")).expect(201))).containsExactly("RECORDED");
    }

    @Test
    void aHoldThatStoodAndWasLiftedSince() {
        var id = with("coated", true);
        var held = scans.send(line("HOLD", id, "2026-11-20T10:00:00Z", "reason", "ILLEGIBLE_MARKS")).expect(201);
        api.as(Role.CLERK).post("/api/holds/" + held.text("/lines/0/holdId") + "/lifts", Map.of("by",
                "COMPETENT_PERSON", "name", "A. Looker", "qualification", "trained employee")).expect(201);
        assertThat(texts(notAllowed(fill(id, "2026-11-20T11:00:00Z"), "FILLED_NOT_ALLOWED", "ON_HOLD"),
                "/lines/0/reasons", "code")).containsExactly("ON_HOLD");
    }

    /** A condemnation may turn out to be a mistake; the fill was none. */
    @Test
    void aCondemnedOneIsHeldBesides() {
        var id = with("specification", "DOT-4E240");
        scans.send(line("HOLD", id, "2026-11-20T10:00:00Z", "reason", "FIRE_OR_OVERHEATED")).expect(201);
        var answer = notAllowed(fill(id, "2026-11-21T10:00:00Z"), "FILLED_NOT_ALLOWED", "CONDEMNED");
        assertThat(texts(answer, "/lines/0/reasons", "code")).contains("CONDEMNED");
    }

    @Test
    void itIsLiftedByAPersonOrByARequalification() {
        var id = with("tare", null);
        var answer = scans.send(fill(id, "2026-11-20T10:00:00Z", "netAfterLb", null, "grossLb", 36)).expect(201);
        var lift = "/api/holds/" + answer.text("/lines/0/holdId") + "/lifts";
        api.as(Role.CLERK).post(lift, Map.of("by", "CLERK", "note", "it is fine")).expectProblem(409, "NOT_LIFTED_SO");
        api.as(Role.YARD).post(lift, Map.of("by", "COMPETENT_PERSON", "name", "A. Looker", "qualification",
                "trained employee")).expect(201);
        assertThat(api.as(Role.CLERK).get("/api/containers/" + id + "/holds?standing=true").at("/items")).isEmpty();
    }

    @Test
    void whatIsToldAtOnceIsStillRefused() {
        var id = with("manufactured", "5-04");
        var body = Map.of("containerId", id, "filledAt", "2026-11-20T10:00:00Z", "specificGravity", 0.508, "netAfterLb",
                19, "lookedAt", true);
        api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills", body)
                .expectProblem(409, "FILL_REFUSED");
        for (var table : List.of("fill", "hold")) {
            assertThat(jdbc.sql("select count(*) from " + table + " where container_id = ?").param(id)
                    .query(Long.class).single()).isZero();
        }
    }
}
