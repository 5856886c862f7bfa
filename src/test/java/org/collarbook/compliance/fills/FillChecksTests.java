package org.collarbook.compliance.fills;

import static org.assertj.core.api.Assertions.assertThat;

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
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is asked beside the weight: the look before, 49 CFR 173.301(a)(2); the leak check after, from memory; and the
 * filler's training, 49 CFR 172.702(b) and 172.704(c) as others quote them.
 */
@RegisterTest
class FillChecksTests {

    private final Api api;
    private final Given given;
    private final Tables tables;

    FillChecksTests(Api api, Given given, Tables tables) {
        this.api = api;
        this.given = given;
        this.tables = tables;
    }

    private UUID inDate() {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-04-20T09:00:00Z");
        return id;
    }

    private static Map<String, @Nullable Object> fill(UUID container) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("containerId", container);
        body.put("filledAt", "2026-11-25T11:00:00Z");
        body.put("specificGravity", 0.508);
        body.put("lookedAt", true);
        body.put("netAfterLb", 19);
        return body;
    }

    private Answer post(Map<String, @Nullable Object> body) {
        return api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills", body);
    }

    private static List<String> told(Answer answer) {
        var codes = new ArrayList<String>();
        answer.at("/told").forEach(reason -> codes.add(reason.at("/code").asString()));
        return codes;
    }

    @Test
    void aLeakCheckThatIsNotRecordedIsTold() {
        var id = inDate();
        var silent = post(fill(id)).expect(201);
        assertThat(told(silent)).containsExactly("LEAK_CHECK_NOT_RECORDED");
        assertThat(silent.text("/told/0/citation/basis")).isEqualTo("MEMORY");
        assertThat(silent.text("/checks/lookBefore/section")).isEqualTo("173.301(a)(2)");
        var body = fill(id);
        body.put("filledAt", "2026-11-25T11:30:00Z");
        body.put("leakChecked", true);
        body.put("leakFound", false);
        assertThat(told(post(body).expect(201))).isEmpty();
        var fills = api.as(Role.CLERK).get("/api/containers/" + id + "/fills").expect(200);
        assertThat(fills.at("/items/0/leakFound").asBoolean(true)).isFalse();
        assertThat(fills.text("/items/0/checks/leakCheckAfter/basis")).isEqualTo("MEMORY");
    }

    @Test
    void aLeakFoundAfterwardsIsAFactAndHoldsTheCylinder() {
        var id = inDate();
        var body = fill(id);
        body.put("leakChecked", true);
        body.put("leakFound", true);
        var recorded = post(body).expect(201);
        assertThat(told(recorded)).containsExactly("LEAK_FOUND");
        var holds = api.as(Role.CLERK).get("/api/containers/" + id + "/holds?standing=true").expect(200);
        assertThat(holds.text("/items/0/reason")).isEqualTo("LEAKING");
        assertThat(holds.text("/items/0/id")).isEqualTo(recorded.text("/leakHoldId"));
        var again = fill(id);
        again.put("filledAt", "2026-11-25T11:30:00Z");
        tables.unchangedBy(() -> post(again).expectProblem(409, "FILL_REFUSED"));
        assertThat(api.as(Role.CLERK).get("/api/containers/" + id + "/history").expect(200).body())
                .contains("FILLED");
    }

    @Test
    void aLeakIsNotFoundWhereNobodyLooked() {
        var body = fill(inDate());
        body.put("leakFound", true);
        tables.unchangedBy(() -> assertThat(post(body).expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("/leakFound", "NOT_CHECKED")));
    }

    /** The last day of three years and the first day after; of another kind of training nothing follows. */
    @ParameterizedTest
    @CsvSource({"FILLING, 2023-11-25, ", "FUNCTION_SPECIFIC, 2023-11-25, ", "FILLING, 2023-11-24, TRAINING_EXPIRED",
            "SAFETY, 2026-01-01, TRAINING_NOT_RECORDED"})
    void theFillersTrainingIsToldAndRefusesNothing(String kind, String trainedOn, @Nullable String code) {
        var person = "staff " + Given.serial();
        api.as(Role.CLERK).post("/api/training", Map.of("person", person, "kind", kind, "trainedOn", trainedOn,
                "providedBy", "Invented School, 1 Main Street", "certifiedBy", "M. Holt")).expect(201);
        var body = fill(inDate());
        body.put("leakChecked", true);
        body.put("filledBy", person);
        var recorded = post(body).expect(201);
        assertThat(told(recorded)).isEqualTo(code == null ? List.of() : List.of(code));
        assertThat(recorded.text("/filledBy")).isEqualTo(person);
    }
}
