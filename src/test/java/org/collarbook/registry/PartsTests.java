package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

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
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.test.context.TestPropertySource;

/**
 * Parts of containers. Here the rules that rest on memory are switched on: a relief valve of a stationary tank is replaced
 * ten years after it was made, common practice, no source.
 */
@RegisterTest
@TestPropertySource(properties = "collarbook.enable=MEMORY")
class PartsTests {

    private final Api.Session yard;
    private final Api.Session clerk;
    private final Given given;
    private final Tables tables;

    PartsTests(Api api, Given given, Tables tables) {
        this.yard = api.as(Role.YARD);
        this.clerk = api.as(Role.CLERK);
        this.given = given;
        this.tables = tables;
    }

    static Map<String, @Nullable Object> tank() {
        var body = Given.cylinder();
        body.put("kind", "STATIONARY_TANK");
        body.put("specification", "ASME");
        body.put("manufactured", "2010-05");
        body.put("waterCapacity", "500 gal");
        body.put("servicePressure", 250);
        body.remove("tare");
        return body;
    }

    static Map<String, @Nullable Object> valve(String made, String fittedOn) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("kind", "RELIEF_VALVE");
        body.put("maker", "Invented Valve Works");
        body.put("model", "RV-1");
        body.put("manufactured", made);
        body.put("fittedOn", fittedOn);
        return body;
    }

    private UUID standing(Map<String, @Nullable Object> body) {
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-01T09:00:00Z");
        return id;
    }

    private static String parts(UUID id) {
        return "/api/containers/" + id + "/parts";
    }

    private Answer assessed(UUID id) {
        return clerk.get("/api/containers/" + id + "/assessment").expect(200);
    }

    private static @Nullable String valveDue(Answer assessed) {
        for (var clock : assessed.at("/requirements")) {
            if (clock.at("/requirement").asString().equals("RELIEF_VALVE")) {
                return clock.at("/due").asString();
            }
        }
        return null;
    }

    @Test
    void theClockOfAReliefValveRunsFromTheMonthStampedOnIt() {
        var id = standing(tank());
        assertThat(valveDue(assessed(id))).as("from the tank's own month").isEqualTo("2020-05");
        var old = yard.post(parts(id), valve("2015-03", "2015-06-10")).expect(201);
        assertThat(valveDue(assessed(id))).isEqualTo("2025-03");
        assertThat(assessed(id).at("/mayFill").asBoolean()).isFalse();
        var body = valve("2024-05", "2026-11-20");
        body.put("replaces", old.id());
        var fresh = yard.post(parts(id), body).expect(201);
        assertThat(valveDue(assessed(id))).isEqualTo("2034-05");
        assertThat(assessed(id).at("/mayFill").asBoolean()).isTrue();
        var list = yard.get(parts(id)).expect(200);
        assertThat(list.at("/items/0")).isEqualTo(fresh.json());
        assertThat(list.text("/items/1/removedOn")).isEqualTo("2026-11-20");
        assertThat(list.at("/items/1/inPlace").asBoolean()).isFalse();
        var history = clerk.get("/api/containers/" + id + "/history").expect(200);
        assertThat(history.body()).contains("PART_FITTED", "PART_REMOVED", "Invented Valve Works");
    }

    @Test
    void aReliefValveTakenOutAndNotReplacedIsNeverAYes() {
        var id = standing(tank());
        var valve = yard.post(parts(id), valve("2024-05", "2024-06-10")).expect(201).id();
        assertThat(assessed(id).at("/mayFill").asBoolean()).isTrue();
        var removal = Map.of("removedOn", "2026-11-24", "reason", "leaks at the seat");
        yard.post(parts(id) + "/" + valve + "/removal", removal).expect(201);
        var out = assessed(id);
        assertThat(out.at("/mayFill").asBoolean()).isFalse();
        assertThat(out.body()).contains("RELIEF_VALVE_REMOVED");
        tables.unchangedBy(() -> yard.post(parts(id) + "/" + valve + "/removal", removal)
                .expectProblem(409, "ALREADY_REMOVED"));
        yard.post(parts(id), valve("2025-01", "2026-11-25")).expect(201);
        assertThat(assessed(id).at("/mayFill").asBoolean()).isTrue();
    }

    /** What a requalifier recorded of a valve before another was fitted was done to the old one. */
    @Test
    void aRecordOfAnOlderValveGivesWay() {
        var id = standing(tank());
        yard.post("/api/containers/" + id + "/requalifications", Map.of("performedOn", "2021-05-04", "method",
                "VALVE_REPLACED", "operator", "M. Holt")).expect(201);
        assertThat(valveDue(assessed(id))).isEqualTo("2031-05");
        yard.post(parts(id), valve("2019-02", "2026-11-20")).expect(201);
        assertThat(valveDue(assessed(id))).isEqualTo("2029-02");
    }

    /** A rejection may stand in what nobody has read; a new valve answers for itself alone. */
    @Test
    void aReliefValveTellsNothingOfAHistoryThatIsNotKnown() {
        var body = tank();
        body.put("collarRead", false);
        var id = standing(body);
        yard.post(parts(id), valve("2024-05", "2024-06-10")).expect(201);
        assertThat(assessed(id).at("/mayFill").asBoolean()).isFalse();
        assertThat(assessed(id).body()).contains("MISSING_REQUALIFICATIONS");
    }

    /** Common practice, no source: a valve lies in stock before the tank that it is fitted to is made. */
    @Test
    void aValveMayBeOlderThanItsTank() {
        var body = tank();
        body.put("manufactured", "2020-01");
        var id = standing(body);
        yard.post(parts(id), valve("2019-11", "2020-02-10")).expect(201);
        assertThat(valveDue(assessed(id))).isEqualTo("2029-11");
        assertThat(assessed(id).at("/mayFill").asBoolean()).isTrue();
    }

    private void looked(UUID id, String day, String finding) {
        yard.post("/api/containers/" + id + "/requalifications", Map.of("performedOn", day, "method",
                "VALVE_INSPECTED", "operator", "M. Holt", "visual", Sheets.looked("VALVE", finding), "disposition",
                "told the owner"))
                .expect(201);
    }

    private String status(UUID id) {
        return assessed(id).text("/status");
    }

    @Test
    void aRejectedValveIsAnsweredByAnotherFittedSince() {
        var id = standing(tank());
        var old = yard.post(parts(id), valve("2024-05", "2024-06-10")).expect(201).id();
        looked(id, "2026-11-10", "DEFECT");
        assertThat(status(id)).isEqualTo("REJECTED");
        looked(id, "2026-11-12", "SATISFACTORY");
        assertThat(status(id)).as("passed since").isEqualTo("IN_DATE");
        looked(id, "2026-11-14", "DEFECT");
        assertThat(status(id)).isEqualTo("REJECTED");
        var body = valve("2025-03", "2026-11-14");
        var fresh = yard.post(parts(id), body).expect(201).id();
        assertThat(status(id)).as("which of the two was rejected is not known").isEqualTo("REJECTED");
        yard.post(parts(id) + "/" + old + "/removal", Map.of("removedOn", "2026-11-14", "reason", "weeps"))
                .expect(201);
        assertThat(status(id)).as("the sheet tells no hour").isEqualTo("REJECTED");
        looked(id, "2026-11-15", "SATISFACTORY");
        assertThat(status(id)).isEqualTo("IN_DATE");
        looked(id, "2026-11-20", "DEFECT");
        assertThat(status(id)).as("the new one, in the month in which it was fitted").isEqualTo("REJECTED");
        var latest = valve("2025-03", "2026-11-21");
        latest.put("replaces", fresh);
        yard.post(parts(id), latest).expect(201);
        assertThat(status(id)).as("another, on a later day").isEqualTo("IN_DATE");
    }

    /** A pass that is not of the valve that was rejected does not answer it, though it is of the same month. */
    @Test
    void aValveThatStaysIsNotAnsweredByTheReplacementOfAnother() {
        var id = standing(tank());
        yard.post(parts(id), valve("2024-05", "2024-06-10")).expect(201);
        var other = yard.post(parts(id), valve("2024-05", "2024-06-11")).expect(201).id();
        looked(id, "2026-11-10", "DEFECT");
        var body = valve("2025-03", "2026-11-12");
        body.put("replaces", other);
        yard.post(parts(id), body).expect(201);
        yard.post("/api/containers/" + id + "/requalifications", Map.of("performedOn", "2026-11-12", "method",
                "VALVE_REPLACED", "operator", "M. Holt")).expect(201);
        assertThat(status(id)).isEqualTo("REJECTED");
    }

    @Test
    void anOverfillingPreventionDeviceOnRecordAllowsTheFill() {
        var cylinder = Given.cylinder();
        cylinder.put("manufactured", "5-20");
        cylinder.put("use", "FUEL");
        var id = standing(cylinder);
        assertThat(assessed(id).body()).contains("MISSING_OVERFILL_PREVENTION");
        assertThat(assessed(id).at("/mayFill").asBoolean()).isFalse();
        var device = new LinkedHashMap<String, @Nullable Object>(Map.of("kind", "OVERFILL_PREVENTION_DEVICE",
                "fittedOn", "2020-05-10"));
        var part = yard.post(parts(id), device).expect(201).id();
        assertThat(assessed(id).at("/mayFill").asBoolean()).isTrue();
        yard.post(parts(id) + "/" + part + "/removal", Map.of("removedOn", "2026-11-25", "reason", "defective"))
                .expect(201);
        assertThat(assessed(id).body()).contains("NO_OVERFILL_PREVENTION");
        yard.post(parts(id), Map.of("kind", "EXEMPTION_LABEL", "labelledFor", "INDUSTRIAL_TRUCK", "fittedOn",
                "2026-11-25")).expect(201);
        assertThat(assessed(id).at("/mayFill").asBoolean()).isTrue();
    }

    static Stream<Arguments> wrong() {
        return Stream.of(row("kind", null, "MISSING"), row("kind", "HOSE", "UNKNOWN_WORD"),
                row("manufactured", null, "MISSING"), row("manufactured", "5-24", "INVALID_MONTH"),
                row("manufactured", "2026-12", "OUT_OF_RANGE"), row("fittedOn", null, "MISSING"),
                row("fittedOn", "2026-11-27", "IN_THE_FUTURE"), row("fittedOn", "1700-01-01", "OUT_OF_RANGE"),
                row("fittedOn", "2010-04-30", "OUT_OF_RANGE"), row("maker", "m".repeat(101), "INVALID_TEXT"),
                row("labelledFor", "HORIZONTAL", "NOT_ALLOWED"), row("kind", "OVERFILL_PREVENTION_DEVICE",
                        "NOT_FOR_THIS_KIND"),
                row("replaces", UUID.randomUUID(), "UNKNOWN_PART"), row("due", "2030-01", "UNKNOWN_FIELD"));
    }

    private static Arguments row(String field, @Nullable Object value, String code) {
        return Arguments.of(field, value, code);
    }

    @ParameterizedTest
    @MethodSource("wrong")
    void aWrongPartIsRefusedByCode(String field, @Nullable Object value, String code) {
        var id = given.registered(tank());
        var body = valve("2024-05", "2026-11-20");
        body.put(field, value);
        tables.unchangedBy(() -> assertThat(yard.post(parts(id), body).expectProblem(400, "INVALID_INPUT").errors()
                .values()).contains(code));
    }

    @Test
    void onePartIsRecordedOnceAndOfAKnownContainer() {
        var id = given.registered(tank());
        yard.post(parts(id), valve("2024-05", "2026-11-20")).expect(201);
        tables.unchangedBy(() -> yard.post(parts(id), valve("2024-05", "2026-11-20"))
                .expectProblem(409, "ALREADY_RECORDED"));
        tables.unchangedBy(() -> yard.post(parts(UUID.randomUUID()), valve("2024-05", "2026-11-20"))
                .expectProblem(404, "NOT_FOUND"));
        for (var path : List.of(parts(UUID.randomUUID()), "/api/containers/" + UUID.randomUUID()
                + "/out-of-service")) {
            yard.get(path).expectProblem(404, "NOT_FOUND");
        }
        tables.unchangedBy(() -> yard.post(parts(id) + "/" + UUID.randomUUID() + "/removal", Map.of("removedOn",
                "2026-11-25", "reason", "none")).expectProblem(404, "NOT_FOUND"));
    }
}
