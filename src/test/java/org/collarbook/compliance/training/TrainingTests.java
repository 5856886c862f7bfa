package org.collarbook.compliance.training;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 49 CFR 172.704: repeated at least every three years; what a record of it tells, and how long it is kept. */
@RegisterTest
class TrainingTests {

    private final Api.Session clerk;
    private final Api api;
    private final Tables tables;

    TrainingTests(Api api, Tables tables) {
        this.api = api;
        this.clerk = api.as(Role.CLERK);
        this.tables = tables;
    }

    private static Map<String, @Nullable Object> training(String person, String trainedOn) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("person", person);
        body.put("kind", "FILLING");
        body.put("trainedOn", trainedOn);
        body.put("providedBy", "Invented School, 1 Main Street");
        body.put("materials", "course of 2023");
        body.put("certifiedBy", "M. Holt");
        return body;
    }

    @Test
    void itExpiresAfterThreeYearsUnlessItIsRepeated() {
        var person = "staff " + Given.serial();
        var first = clerk.post("/api/training", training(person, "2024-02-29")).expect(201);
        assertThat(first.text("/expires")).isEqualTo("2027-02-28");
        assertThat(first.text("/kept")).contains("90 days");
        var path = "/api/training?person=" + person.replace(" ", "%20") + "&expiringBefore=";
        assertThat(clerk.get(path + "2027-03-01").at("/items/0")).isEqualTo(first.json());
        assertThat(clerk.get(path + "2027-02-28").at("/items")).isEmpty();
        clerk.post("/api/training", training(person, "2026-11-20")).expect(201);
        assertThat(clerk.get(path + "2027-03-01").at("/items")).as("repeated since").isEmpty();
        tables.unchangedBy(() -> clerk.post("/api/training", training(person, "2026-11-20"))
                .expectProblem(409, "ALREADY_RECORDED"));
        var page = clerk.get("/api/training?size=1&person=" + person.replace(" ", "%20")).expect(200);
        assertThat(clerk.get("/api/training?size=1&person=" + person.replace(" ", "%20") + "&cursor=" + page.text(
                "/next")).text("/items/0/trainedOn")).isEqualTo("2026-11-20");
    }

    @ParameterizedTest
    @CsvSource({"person, , MISSING", "kind, DANCING, UNKNOWN_WORD", "kind, , MISSING", "trainedOn, , MISSING",
            "trainedOn, 2026-11-27, OUT_OF_RANGE", "expires, 2029-11-21, OUT_OF_RANGE",
            "expires, 2026-11-20, OUT_OF_RANGE", "providedBy, , MISSING", "certifiedBy, , MISSING"})
    void aWrongTrainingIsRefused(String field, @Nullable String value, String code) {
        var body = training("staff " + Given.serial(), "2026-11-20");
        body.put(field, value);
        tables.unchangedBy(() -> assertThat(clerk.post("/api/training", body).expectProblem(400, "INVALID_INPUT")
                .errors()).isEqualTo(Map.of("/" + field, code)));
    }

    @Test
    void aForeignCursorAndAForeignRoleAreRefused() {
        clerk.get("/api/training?cursor=eHg").expectProblem(400, "INVALID_INPUT");
        tables.unchangedBy(() -> api.as(Role.FILLER).post("/api/training", training("x", "2026-11-20"))
                .expectProblem(403, "FORBIDDEN"));
    }
}
