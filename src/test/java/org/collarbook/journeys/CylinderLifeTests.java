package org.collarbook.journeys;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;

import org.collarbook.access.Role;
import org.collarbook.inspection.Sheets;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.function.Executable;

/**
 * One 20 lb cylinder from its registration to its condemnation. What decides at each step: 49 CFR 180.209(e), (g)
 * (twelve years from manufacture, five after an external visual), 173.304a (42 % of the water capacity), 173.301(a)(2),
 * 180.205(c) (filled in time it may be used until empty, not topped off), 180.205(i) (over 10 % permanent expansion).
 */
@RegisterTest
class CylinderLifeTests {

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final TestClock clock;
    private final UUID depot;
    private final UUID customer;
    private final String rin = Sheets.rin();
    private UUID cylinder = new UUID(0, 0);

    CylinderLifeTests(Api api, Given given, Tables tables, TestClock clock) {
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.clock = clock;
        this.depot = given.site(null);
        this.customer = given.site(given.customer());
    }

    @TestFactory
    Stream<DynamicTest> aLife() {
        return Stream.of(
                step("2026-11-25 registered new, due twelve years after its manufacture", "2026-11-25",
                        this::registered),
                step("2026-11-26 filled to its limit and brought to a customer", "2026-11-26", this::filled),
                step("2026-12-10 its relief valve discharged: held", "2026-12-10", this::held),
                step("2026-12-11 a filler and a clerk are both refused", "2026-12-11", this::refusedWhileHeld),
                step("2026-12-14 requalified by external visual: the hold is lifted, due in five years", "2026-12-14",
                        this::requalified),
                step("2031-12-31 filled on the last day it may be", "2031-12-31", this::filledOnItsLastDay),
                step("2032-01-01 used up, not topped off", "2032-01-01", this::usedUp),
                step("2032-01-15 came back empty: overdue", "2032-01-15", this::cameBackEmpty),
                step("2032-02-02 condemned by its test, for good", "2032-02-02", this::condemned),
                step("its history tells it all and is proved", "2032-02-03", this::proved),
                step("each answer of before is given again", "2032-02-03", this::replayed));
    }

    private DynamicTest step(String name, String day, Executable does) {
        return dynamicTest(name, () -> {
            clock.set(LocalDate.parse(day));
            does.execute();
        });
    }

    private void registered() {
        var facility = Sheets.facility(rin);
        facility.put("approval", Map.of("from", "2026-01-01", "expires", "2040-01-01"));
        api.as(Role.CLERK).post("/api/requalifiers", facility).expect(201);
        var body = Given.cylinder();
        body.put("manufactured", "10-26");
        cylinder = given.registered(body);
        given.moved(cylinder, depot, "2026-11-25T11:00:00Z");
        is("IN_DATE", true, "2038-10");
    }

    private void filled() {
        assertThat(check().at("/most/netLb").decimalValue()).isEqualByComparingTo("19.99");
        fill("2026-11-26T11:00:00Z", 36.9).expect(201);
        given.moved(cylinder, customer, "2026-11-26T11:30:00Z");
        is("IN_DATE", true, "2038-10");
    }

    private void held() {
        api.as(Role.YARD).post(path("/holds"), Map.of("reason", "OVERFILLED_OR_DISCHARGED", "occurredAt",
                "2026-12-10T09:00:00Z")).expect(201);
        is("ON_HOLD", false, "2038-10");
    }

    private void refusedWhileHeld() {
        given.moved(cylinder, depot, "2026-12-11T09:00:00Z");
        var hold = api.as(Role.CLERK).get(path("/holds")).expect(200).text("/items/0/id");
        tables.unchangedBy(() -> {
            assertThat(fill("2026-12-11T10:00:00Z", 30).expectProblem(409, "FILL_REFUSED").body()).contains("ON_HOLD");
            api.as(Role.CLERK).post("/api/holds/" + hold + "/lifts", Map.of("by", "CLERK", "note", "looks fine"))
                    .expectProblem(409, "NOT_LIFTED_SO");
        });
        is("ON_HOLD", false, "2038-10");
    }

    private void requalified() {
        var sheet = Sheets.visual(rin);
        sheet.put("performedOn", "2026-12-14");
        assertThat(api.as(Role.YARD).post(path("/requalifications"), sheet).expect(201).text("/result"))
                .isEqualTo("PASSED");
        assertThat(api.as(Role.YARD).get(path("/holds?standing=true")).expect(200).at("/items")).isEmpty();
        is("IN_DATE", true, "2031-12");
    }

    private void filledOnItsLastDay() {
        is("DUE_THIS_MONTH", true, "2031-12");
        fill("2031-12-31T11:00:00Z", 36.5).expect(201);
        given.moved(cylinder, customer, "2031-12-31T11:30:00Z");
    }

    private void usedUp() {
        var answer = is("USE_UP", false, "2031-12");
        assertThat(answer.at("/mayUse").asBoolean()).isTrue();
        assertThat(answer.at("/mayCarry").asBoolean()).isTrue();
        tables.unchangedBy(() -> fill("2032-01-01T11:00:00Z", 36.9).expectProblem(409, "FILL_REFUSED"));
    }

    private void cameBackEmpty() {
        given.moved(cylinder, depot, "2032-01-15T09:00:00Z");
        api.as(Role.YARD).post(path("/emptyings"), Map.of("emptiedAt", "2032-01-15T09:05:00Z")).expect(201);
        var answer = is("OVERDUE", false, "2031-12");
        assertThat(answer.at("/mayUse").asBoolean()).isFalse();
        assertThat(answer.at("/mayCarryEmpty").asBoolean()).isTrue();
    }

    private void condemned() {
        var sheet = Sheets.volumetric(rin);
        sheet.put("performedOn", "2032-02-02");
        sheet.put("expansion", Sheets.expansion("200 cm3", null, "20.02 cm3"));
        sheet.put("disposition", "X's over the marks");
        assertThat(api.as(Role.YARD).post(path("/requalifications"), sheet).expect(201).text("/result"))
                .isEqualTo("CONDEMNED");
        var answer = is("CONDEMNED", false, null);
        assertThat(answer.at("/mayCarryEmpty").asBoolean()).isTrue();
        tables.unchangedBy(() -> {
            fill("2032-02-02T11:00:00Z", 20).expectProblem(409, "FILL_REFUSED");
            api.as(Role.YARD).post(path("/requalifications"), sheet).expectProblem(409, "CONDEMNED");
            api.as(Role.YARD).post(path("/holds"), Map.of("reason", "DENTED")).expectProblem(409,
                    "CONTAINER_CONDEMNED");
        });
    }

    private void proved() {
        var entries = api.as(Role.CLERK).get(path("/history?size=100")).expect(200).at("/items");
        var kinds = entries.findValuesAsString("kind");
        assertThat(kinds.reversed()).as(entries.toString()).containsSubsequence("REGISTERED", "FILLED", "MOVED", "HELD",
                "REQUALIFIED", "FILLED", "MOVED", "EMPTIED", "REQUALIFIED");
        var proof = api.as(Role.CLERK).get("/api/audit/verification?container=" + cylinder).expect(200);
        assertThat(proof.at("/broken")).as(proof.body()).isEmpty();
        assertThat(proof.at("/entries").asInt()).isEqualTo(entries.size());
    }

    private void replayed() {
        for (var then : List.of("2026-11-26 IN_DATE", "2026-12-12 ON_HOLD", "2026-12-15 IN_DATE",
                "2032-01-02 USE_UP", "2032-01-16 OVERDUE", "2032-02-02 CONDEMNED")) {
            var day = then.substring(0, 10);
            var answer = api.as(Role.CLERK).get(path("/assessment?on=" + day + "&knownAt=" + day + "T23:00:00Z"))
                    .expect(200);
            assertThat(answer.text("/status")).as(then + " " + answer.body()).isEqualTo(then.substring(11));
        }
    }

    private String path(String under) {
        return "/api/containers/" + cylinder + under;
    }

    private Answer is(String status, boolean mayFill, @Nullable String due) {
        var answer = api.as(Role.FILLER).get(path("/assessment")).expect(200);
        assertThat(answer.text("/status")).as(answer.body()).isEqualTo(status);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isEqualTo(mayFill);
        if (due != null) {
            assertThat(answer.text("/requirements/0/due")).isEqualTo(due);
        }
        return answer;
    }

    private Answer check() {
        var serial = api.as(Role.CLERK).get(path("")).expect(200).text("/serial");
        return api.as(Role.FILLER).get("/api/fill-check?serial=" + serial + "&specificGravity=0.508").expect(200);
    }

    private Answer fill(String at, double grossLb) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("containerId", cylinder);
        body.put("filledAt", Instant.parse(at).toString());
        body.put("specificGravity", 0.508);
        body.put("lookedAt", true);
        body.put("leakChecked", true);
        body.put("grossLb", grossLb);
        return api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills", body);
    }
}
