package org.collarbook.compliance.fills;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
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
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A 20 lb cylinder (47.6 lb of water, tare 17 lb) may have 19.99 lb in it: 49 CFR 173.304a(d)(1), 42 %. */
@RegisterTest
class FillsTests {

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final TestClock clock;

    FillsTests(Api api, Given given, Tables tables, TestClock clock) {
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.clock = clock;
    }

    private UUID made(String manufactured) {
        var body = Given.cylinder();
        body.put("manufactured", manufactured);
        return standing(body);
    }

    private UUID standing(Map<String, @Nullable Object> body) {
        var id = given.registered(body);
        given.moved(id, given.site(given.customer()), "2026-04-20T09:00:00Z");
        return id;
    }

    private static Map<String, @Nullable Object> fill(UUID container) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("containerId", container);
        body.put("filledAt", "2026-11-25T11:00:00Z");
        body.put("specificGravity", 0.508);
        body.put("lookedAt", true);
        return body;
    }

    private Answer post(Map<String, @Nullable Object> body) {
        return api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills", body);
    }

    private Answer post(UUID container, String field, Object value) {
        var body = fill(container);
        body.put(field, value);
        return post(body);
    }

    private Answer assessment(UUID container) {
        return api.as(Role.CLERK).get("/api/containers/" + container + "/assessment").expect(200);
    }

    private static List<String> codes(Answer answer, String list) {
        var codes = new ArrayList<String>();
        answer.at(list).forEach(reason -> codes.add(reason.at("/code").asString()));
        return codes;
    }

    @Test
    void aFillOnTheScaleIsRecordedWithAllThatJudgedIt() {
        var id = made("6-20");
        var body = fill(id);
        body.put("grossLb", 36.5);
        body.put("heelLb", 3);
        body.put("leakChecked", true);
        var recorded = post(body).expect(201);
        assertThat(recorded.header("Location")).isEqualTo("/api/containers/" + id + "/fills");
        assertThat(recorded.text("/caution")).contains("Look at the container");
        var fills = api.as(Role.CLERK).get("/api/containers/" + id + "/fills").expect(200);
        assertThat(fills.at("/items")).hasSize(1);
        assertThat(fills.text("/items/0/id")).isEqualTo(recorded.id());
        assertThat(number(fills, "netAfterLb")).isEqualByComparingTo("19.5");
        assertThat(number(fills, "addedLb")).isEqualByComparingTo("16.5");
        assertThat(number(fills, "tareLb")).isEqualByComparingTo("17");
        assertThat(number(fills, "maxNetLb")).isEqualByComparingTo("19.99");
        assertThat(number(fills, "specificGravity")).isEqualByComparingTo("0.508");
        assertThat(fills.at("/items/0/lookedAt").asBoolean()).isTrue();
        assertThat(fills.at("/items/0/leakChecked").asBoolean()).isTrue();
        assertThat(fills.text("/items/0/ruleBook")).startsWith("sha256:");
        assertThat(fills.text("/items/0/filledOn")).isEqualTo("2026-11-25");
    }

    private Answer filled(UUID container, String at, String gravity, String net, @Nullable String heel) {
        var body = fill(container);
        body.put("filledAt", at);
        body.put("specificGravity", new BigDecimal(gravity));
        body.put("netAfterLb", new BigDecimal(net));
        body.put("heelLb", heel == null ? null : new BigDecimal(heel));
        return post(body);
    }

    /**
     * The filling density is that of what is in it, not of what goes in last: 49 CFR 173.304a(d)(1), 42 % at 0.504 to
     * 0.510 and 53 % at 0.593 to 0.600 of 47.6 lb.
     */
    @Test
    void aHeavierLiquidOnTopOfALighterHasTheLimitOfTheLighter() {
        var id = made("6-20");
        filled(id, "2026-11-25T11:00:00Z", "0.508", "19.9", null).expect(201);
        var refused = filled(id, "2026-11-25T11:00:03Z", "0.6", "25.2", null).expectProblem(409, "OVER_LIMIT");
        assertThat(refused.at("/limit/netLb").decimalValue()).isEqualByComparingTo("19.99");
        filled(id, "2026-11-25T11:00:03Z", "0.6", "25.2", "0.5").expectProblem(409, "OVER_LIMIT");
        var tag = api.as(Role.CLERK).get("/api/containers/" + id).expect(200).text("/serial");
        var check = api.as(Role.FILLER).get("/api/fill-check?specificGravity=0.6&serial=" + tag).expect(200);
        assertThat(codes(check, "/reasons")).contains("ON_LIGHTER_LIQUID");
        assertThat(check.at("/most/netLb").decimalValue()).isEqualByComparingTo("19.99");
        assertThat(codes(api.as(Role.FILLER).get("/api/fill-check?specificGravity=0.505&serial=" + tag), "/reasons"))
                .doesNotContain("ON_LIGHTER_LIQUID");
        // it was empty, so nothing of the lighter is left
        filled(id, "2026-11-25T11:00:03Z", "0.6", "25.2", "0").expect(201);
    }

    /** Volumes add up: 15 lb are 5 lb at 0.508 and 10 lb at 0.6, which is 0.5658, for which the table has 49 %. */
    @Test
    void whatWasLeftOfALighterLiquidCountsByItsVolume() {
        var id = made("6-20");
        filled(id, "2026-11-25T09:00:00Z", "0.508", "10", null).expect(201);
        filled(id, "2026-11-25T10:00:00Z", "0.6", "15", "5").expect(201);
        var over = filled(id, "2026-11-25T11:00:00Z", "0.6", "23.4", null).expectProblem(409, "OVER_LIMIT");
        assertThat(over.at("/limit/netLb").decimalValue()).isEqualByComparingTo("23.32");
        api.as(Role.YARD).post("/api/containers/" + id + "/emptyings", Map.of("emptiedAt", "2026-11-25T10:30:00Z"))
                .expect(201);
        filled(id, "2026-11-25T11:00:00Z", "0.6", "25.2", null).expect(201);
    }

    private static BigDecimal number(Answer fills, String field) {
        return fills.at("/items/0/" + field).decimalValue();
    }

    /** Both sides of the limit, by each way of telling it; 0.508 × 8.32828 is 4.23077 lb a gallon at 60 °F. */
    @ParameterizedTest
    @CsvSource({"netAfterLb, 19.99, true", "netAfterLb, 19.991, false", "grossLb, 36.99, true",
            "grossLb, 36.991, false",
            "gallonsAdded, 4.015, true", "gallonsAdded, 4.017, false"})
    void upToTheLimitAndNoFurther(String way, String amount, boolean fits) {
        var body = fill(made("6-20"));
        body.put(way, new BigDecimal(amount));
        if (way.equals("gallonsAdded")) {
            // a heel counts: 4.7 gallons would go into the empty cylinder
            body.put("heelLb", 3);
        }
        if (fits) {
            assertThat(post(body).expect(201).at("/netAfterLb").decimalValue())
                    .isLessThanOrEqualTo(new BigDecimal("19.99"));
        } else {
            tables.unchangedBy(() -> {
                var refused = post(body).expectProblem(409, "OVER_LIMIT");
                assertThat(refused.at("/limit/netLb").decimalValue()).isEqualByComparingTo("19.99");
                assertThat(refused.at("/limit/grossLb").decimalValue()).isEqualByComparingTo("36.99");
                assertThat(codes(refused, "/reasons")).containsExactly("OVER_LIMIT");
                assertThat(refused.text("/reasons/0/citation/section")).isEqualTo("173.304a(d)(1)");
            });
        }
    }

    /** 10 gallons at 40 °F are 10.3 at 60 °F: 29 CFR 1910.110(b)(19)(v) has 1.031. */
    @Test
    void gallonsCountedColdWeighMore() {
        var body = fill(made("6-20"));
        body.put("gallonsAdded", 4);
        body.put("heelLb", 0);
        var warm = post(body).expect(201).at("/netAfterLb").decimalValue();
        body.put("filledAt", "2026-11-25T11:30:00Z");
        body.put("liquidTemperatureF", 40);
        var cold = post(body).expect(201).at("/netAfterLb").decimalValue();
        assertThat(cold.doubleValue() / warm.doubleValue()).isBetween(1.0305, 1.0315);
        body.put("liquidTemperatureF", 140);
        assertThat(codes(post(body).expectProblem(409, "FILL_REFUSED"), "/reasons")).contains("VOLUME_NOT_CORRECTED");
    }

    /** 49 CFR 173.301(a)(6): a cylinder that has become due is not filled; topping off is a fill. */
    @ParameterizedTest
    @CsvSource({"netAfterLb, 19", "netAfterLb, 0.5", "grossLb, 17.1"})
    void toppingOffAnOverdueContainerIsRefused(String way, String amount) {
        var id = made("5-04");
        tables.unchangedBy(() -> {
            var refused = post(id, way, new BigDecimal(amount)).expectProblem(409, "FILL_REFUSED");
            assertThat(codes(refused, "/reasons")).containsExactly("OVERDUE");
            assertThat(refused.body()).contains("180.20");
        });
    }

    @Test
    void everyReasonIsTold() {
        var body = Given.cylinder();
        body.remove("marksLegible");
        body.remove("tare");
        var id = standing(body);
        var fill = fill(id);
        fill.remove("specificGravity");
        fill.put("grossLb", 40);
        tables.unchangedBy(() -> assertThat(codes(post(fill).expectProblem(409, "FILL_REFUSED"), "/reasons"))
                .contains("OVERDUE", "MISSING_MARKS_LEGIBLE", "MISSING_TARE", "MISSING_SPECIFIC_GRAVITY"));
    }

    @Test
    void anObservedOverfillIsAFactAndPutsAHoldOn() {
        var id = made("6-20");
        var body = fill(id);
        body.put("grossLb", 38.2);
        post(body).expectProblem(409, "OVER_LIMIT");
        body.put("observedOverfill", true);
        var recorded = post(body).expect(201);
        assertThat(recorded.at("/refusedFor").toString()).isEqualTo("[\"OVER_LIMIT\"]");
        assertThat(recorded.text("/holdId")).isNotEmpty();
        var after = assessment(id);
        assertThat(after.text("/status")).isEqualTo("ON_HOLD");
        assertThat(after.at("/mayFill").asBoolean()).isFalse();
        tables.unchangedBy(() -> {
            var next = fill(id);
            next.put("filledAt", "2026-11-25T11:30:00Z");
            next.put("netAfterLb", 10);
            assertThat(codes(post(next).expectProblem(409, "FILL_REFUSED"), "/reasons")).contains("ON_HOLD");
        });
    }

    /** What was said to happen before the hold was placed is refused all the same. */
    @Test
    void aHoldThatStandsRefusesAnEarlierFillToo() {
        var id = made("6-20");
        api.as(Role.YARD).post("/api/containers/" + id + "/holds",
                Map.of("reason", "DENTED", "occurredAt", "2026-11-25T10:00:00Z")).expect(201);
        var body = fill(id);
        body.put("filledAt", "2026-11-23T15:00:00Z");
        body.put("netAfterLb", 10);
        tables.unchangedBy(() -> assertThat(codes(post(body).expectProblem(409, "FILL_REFUSED"), "/reasons"))
                .contains("ON_HOLD"));
    }

    @Test
    void whatIsWithinTheLimitIsNoOverfill() {
        var body = fill(made("6-20"));
        body.put("netAfterLb", 19.99);
        body.put("observedOverfill", true);
        tables.unchangedBy(() -> assertThat(post(body).expectProblem(400, "INVALID_INPUT").errors())
                .containsExactly(Map.entry("/observedOverfill", "NOT_OVERFILLED")));
    }

    @Test
    void anOverfillOfNoKnownLimitIsRecordedToo() {
        var body = fill(made("6-20"));
        body.remove("specificGravity");
        body.put("netAfterLb", 26);
        body.put("observedOverfill", true);
        var recorded = post(body).expect(201);
        assertThat(recorded.at("/refusedFor").toString()).contains("MISSING_SPECIFIC_GRAVITY");
        assertThat(recorded.at("/maxNetLb").isMissingNode()).isTrue();
        assertThat(recorded.text("/holdId")).isNotEmpty();
    }

    /** 49 CFR 173.301(a)(6): filled before it fell due it may be used up; emptied it may not, and the last day counts. */
    @Test
    void filledInTimeItIsUsedUpUntilItIsFoundEmpty() {
        clock.set(Instant.parse("2026-06-30T20:00:00Z"));
        var id = made("6-14");
        var body = fill(id);
        body.put("filledAt", "2026-06-30T19:00:00Z");
        body.put("netAfterLb", 19);
        post(body).expect(201);
        clock.set(Instant.parse("2026-07-10T12:00:00Z"));
        assertThat(assessment(id).text("/status")).isEqualTo("USE_UP");
        assertThat(assessment(id).at("/mayUse").asBoolean()).isTrue();
        body.put("filledAt", "2026-07-10T11:00:00Z");
        post(body).expectProblem(409, "FILL_REFUSED");
        var emptied = api.as(Role.YARD).post("/api/containers/" + id + "/emptyings",
                Map.of("emptiedAt", "2026-07-10T11:30:00Z", "how", "used up")).expect(201);
        assertThat(emptied.text("/emptiedOn")).isEqualTo("2026-07-10");
        assertThat(assessment(id).text("/status")).isEqualTo("OVERDUE");
        assertThat(assessment(id).at("/mayUse").asBoolean()).isFalse();
    }

    /** The day is the one at the site: 1 July 03:00 in London is still 30 June in Chicago, where it stands. */
    @Test
    void theDayOfAFillIsTheDayAtItsSite() {
        clock.set(Instant.parse("2026-07-01T05:00:00Z"));
        var id = made("6-14");
        var body = fill(id);
        body.put("filledAt", "2026-07-01T03:00:00Z");
        body.put("netAfterLb", 19);
        assertThat(post(body).expect(201).text("/filledOn")).isEqualTo("2026-06-30");
        clock.set(Instant.parse("2026-07-01T05:30:00Z"));
        body.put("filledAt", "2026-07-01T05:10:00Z");
        tables.unchangedBy(() -> post(body).expectProblem(409, "FILL_REFUSED"));
    }

    @Test
    void aFillAfterAnEmptyingEndsIt() {
        clock.set(Instant.parse("2026-06-30T20:00:00Z"));
        var id = made("6-14");
        api.as(Role.YARD).post("/api/containers/" + id + "/emptyings", Map.of("emptiedAt", "2026-06-30T14:00:00Z"))
                .expect(201);
        var body = fill(id);
        body.put("filledAt", "2026-06-30T19:00:00Z");
        body.put("netAfterLb", 19);
        post(body).expect(201);
        clock.set(Instant.parse("2026-07-10T12:00:00Z"));
        assertThat(assessment(id).text("/status")).isEqualTo("USE_UP");
    }

    @Test
    void fillsArePagedTheLatestFirst() {
        var id = made("6-20");
        var body = fill(id);
        body.put("netAfterLb", 19);
        for (var at : List.of("2026-11-24T10:00:00Z", "2026-11-25T11:00:00Z", "2026-11-25T09:00:00Z")) {
            body.put("filledAt", at);
            post(body).expect(201);
        }
        var times = new ArrayList<String>();
        var path = "/api/containers/" + id + "/fills?size=1";
        for (String next = ""; !next.isEmpty() || times.isEmpty();) {
            var page = api.as(Role.CLERK).get(path + (next.isEmpty() ? "" : "&cursor=" + next)).expect(200);
            times.add(page.text("/items/0/filledAt"));
            next = page.at("/next").asString("");
        }
        assertThat(times).containsExactly("2026-11-25T11:00:00Z", "2026-11-25T09:00:00Z", "2026-11-24T10:00:00Z");
        post(body).expectProblem(409, "ALREADY_RECORDED");
        api.as(Role.CLERK).get(path + "&cursor=x").expectProblem(400, "INVALID_INPUT");
        api.as(Role.CLERK).get("/api/containers/" + UUID.randomUUID() + "/fills").expectProblem(404, "NOT_FOUND");
    }

    @Test
    void aRepeatGetsTheFirstAnswerAndAKeyIsRequired() {
        var body = fill(made("6-20"));
        body.put("netAfterLb", 19);
        var key = UUID.randomUUID().toString();
        var filler = api.as(Role.FILLER);
        tables.unchangedBy(() -> filler.post("/api/fills", body).expectProblem(400, "IDEMPOTENCY_KEY_REQUIRED"));
        var first = filler.with("Idempotency-Key", key).post("/api/fills", body).expect(201);
        tables.unchangedBy(() -> {
            var second = filler.with("Idempotency-Key", key).post("/api/fills", body).expect(201);
            assertThat(second.header("Idempotent-Replay")).isEqualTo("true");
            assertThat(second.json()).isEqualTo(first.json());
            body.put("netAfterLb", 18);
            filler.with("Idempotency-Key", key).post("/api/fills", body).expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
        });
    }

    @Test
    void byTagOrByWhatIsStamped() {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        body.put("tag", "TAG-" + Given.serial());
        standing(body);
        var fill = fill(UUID.randomUUID());
        fill.remove("containerId");
        fill.put("netAfterLb", 19);
        fill.put("tag", body.get("tag"));
        post(fill).expect(201);
        fill.remove("tag");
        fill.put("serial", body.get("serial"));
        fill.put("specification", "DOT-4BA240");
        fill.put("filledAt", "2026-11-25T11:30:00Z");
        post(fill).expect(201);
        fill.put("serial", "NOBODY-" + UUID.randomUUID().toString().substring(0, 8));
        tables.unchangedBy(() -> post(fill).expectProblem(404, "NOT_FOUND"));
        var unknown = fill(UUID.randomUUID());
        unknown.put("netAfterLb", 19);
        tables.unchangedBy(() -> post(unknown).expectProblem(404, "NOT_FOUND"));
    }

    @ParameterizedTest
    @CsvSource(nullValues = "null", value = {"filledAt, 2026-11-25T12:06:00Z, /filledAt, IN_THE_FUTURE",
            "filledAt, null, /filledAt, MISSING", "filledAt, 1939-01-01T00:00:00Z, /filledAt, OUT_OF_RANGE",
            "filledAt, 2020-05-31T12:00:00Z, /filledAt, BEFORE_MANUFACTURE", "grossLb, -3, /grossLb, OUT_OF_RANGE",
            "grossLb, 0, /grossLb, OUT_OF_RANGE", "grossLb, 17, /grossLb, BELOW_TARE",
            "grossLb, 16.9, /grossLb, BELOW_TARE", "grossLb, 36.9999, /grossLb, OUT_OF_RANGE",
            "grossLb, 1e999999999, /grossLb, OUT_OF_RANGE", "grossLb, 2000000, /grossLb, OUT_OF_RANGE",
            "grossLb, null, /grossLb, MISSING", "netAfterLb, 19, /grossLb, TOO_MANY",
            "heelLb, -1, /heelLb, OUT_OF_RANGE",
            "heelLb, 19.6, /heelLb, OUT_OF_RANGE", "lookedAt, null, /lookedAt, MISSING",
            "lookedAt, false, /lookedAt, NOT_LOOKED_AT", "specificGravity, 0, /specificGravity, OUT_OF_RANGE",
            "specificGravity, 5.08, /specificGravity, OUT_OF_RANGE", "product, NOBODY, /product, UNKNOWN_PRODUCT",
            "liquidTemperatureF, 151, /liquidTemperatureF, OUT_OF_RANGE", "serial, 1, /containerId, TOO_MANY",
            "containerId, null, /tag, MISSING", "containerId, x, /containerId, WRONG_TYPE",
            "grossLb, heavy, /grossLb, WRONG_TYPE", "colour, blue, /colour, UNKNOWN_FIELD"})
    void whatCannotBeIsRefused(String field, @Nullable String value, String pointer, String code) {
        var body = fill(made("6-20"));
        body.put("grossLb", 36.5);
        body.put(field, value == null || !value.matches("-?[0-9.e]+") || field.equals("filledAt")
                ? "false".equals(value) ? Boolean.FALSE : value
                : field.equals("serial") ? value : new BigDecimal(value));
        tables.unchangedBy(
                () -> assertThat(post(body).expectProblem(400, "INVALID_INPUT").errors()).containsEntry(pointer, code));
    }

    @Test
    void gallonsNeedTheHeel() {
        assertThat(post(made("6-20"), "gallonsAdded", 4).expectProblem(400, "INVALID_INPUT").errors())
                .containsEntry("/heelLb", "MISSING");
    }

    @ParameterizedTest
    @CsvSource(nullValues = "null", value = {"null, /emptiedAt, MISSING",
            "2026-11-26T12:00:00Z, /emptiedAt, IN_THE_FUTURE",
            "2020-05-01T12:00:00Z, /emptiedAt, BEFORE_MANUFACTURE", "1930-05-01T12:00:00Z, /emptiedAt, OUT_OF_RANGE"})
    void anEmptyingThatCannotBeIsRefused(@Nullable String at, String pointer, String code) {
        var id = made("6-20");
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("emptiedAt", at);
        tables.unchangedBy(() -> assertThat(api.as(Role.YARD).post("/api/containers/" + id + "/emptyings", body)
                .expectProblem(400, "INVALID_INPUT").errors()).containsExactly(Map.entry(pointer, code)));
    }

    @Test
    void anEmptyingIsRecordedOnce() {
        var id = made("6-20");
        var body = Map.of("emptiedAt", "2026-11-25T10:00:00Z");
        var yard = api.as(Role.YARD);
        yard.post("/api/containers/" + id + "/emptyings", body).expect(201);
        tables.unchangedBy(() -> {
            yard.post("/api/containers/" + id + "/emptyings", body).expectProblem(409, "ALREADY_RECORDED");
            yard.post("/api/containers/" + UUID.randomUUID() + "/emptyings", body).expectProblem(404, "NOT_FOUND");
        });
    }
}
