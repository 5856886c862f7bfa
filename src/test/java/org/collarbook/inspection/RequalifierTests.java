package org.collarbook.inspection;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

@RegisterTest
class RequalifierTests {

    private final Api api;
    private final Api.Session clerk;
    private final Tables tables;

    RequalifierTests(Api api, Tables tables) {
        this.api = api;
        this.clerk = api.as(Role.CLERK);
        this.tables = tables;
    }

    @Test
    void oneIsRegisteredReadAndItsApprovalRenewed() {
        var rin = Sheets.rin();
        var body = Sheets.facility(rin.toLowerCase(java.util.Locale.ROOT));
        var created = clerk.post("/api/requalifiers", body).expect(201);
        assertThat(created.text("/rin")).isEqualTo(rin);
        assertThat(created.header("Location")).isEqualTo("/api/requalifiers/" + created.id());
        var path = "/api/requalifiers/" + created.id();
        assertThat(api.as(Role.FILLER).get(path).expect(200).json()).isEqualTo(created.json());

        body.put("approval", Map.of("from", "2022-01-01", "expires", "2032-01-01"));
        tables.unchangedBy(() -> {
            clerk.put(path, body).expectProblem(428, "IF_MATCH_REQUIRED");
            api.as(Role.YARD).ifMatch(created).put(path, body).expectProblem(403, "FORBIDDEN");
        });
        var renewed = clerk.ifMatch(created).put(path, body).expect(200);
        assertThat(renewed.text("/approval/expires")).isEqualTo("2032-01-01");
        assertThat(renewed.etag()).isNotEqualTo(created.etag());
        tables.unchangedBy(() -> clerk.ifMatch(created).put(path, body).expectProblem(412, "STALE_VERSION"));
        clerk.with("If-Match", "\"0\"").put("/api/requalifiers/00000000-0000-7000-8000-000000000000", body)
                .expectProblem(404, "NOT_FOUND");
    }

    @Test
    void aRinIsOfOneFacility() {
        var rin = Sheets.rin();
        Sheets.registered(api, rin);
        var other = Sheets.registered(api, Sheets.rin());
        tables.unchangedBy(() -> {
            clerk.post("/api/requalifiers", Sheets.facility(rin)).expectProblem(409, "RIN_TAKEN");
            clerk.ifMatch(other).put("/api/requalifiers/" + other.id(), Sheets.facility(rin))
                    .expectProblem(409, "RIN_TAKEN");
        });
    }

    @Test
    void aRepeatUnderTheSameKeyRegistersOnce() {
        var body = Sheets.facility(Sheets.rin());
        var once = clerk.with("Idempotency-Key", Given.serial());
        var first = once.post("/api/requalifiers", body).expect(201);
        tables.unchangedBy(() -> assertThat(once.post("/api/requalifiers", body).expect(201).json())
                .isEqualTo(first.json()));
    }

    @Test
    void theyAreListedByPages() {
        var first = Sheets.registered(api, Sheets.rin());
        var second = Sheets.registered(api, Sheets.rin());
        var page = clerk.get("/api/requalifiers?size=1").expect(200);
        assertThat(page.at("/items")).hasSize(1);
        assertThat(page.text("/next")).isNotBlank();
        var ids = clerk.get("/api/requalifiers?size=1000").at("/items").findValuesAsString("id");
        assertThat(ids).containsSubsequence(first.id(), second.id());
    }

    static Stream<Arguments> wrong() {
        return Stream.of(row("name", null, "/name", "MISSING"), row("name", "n".repeat(201), "/name", "INVALID_TEXT"),
                row("rin", null, "/rin", "MISSING"), row("rin", "AB12", "/rin", "INVALID_RIN"),
                row("rin", "A1234", "/rin", "INVALID_RIN"), row("approval", null, "/approval/from", "MISSING"),
                row("approval", approval("2022-01-01", null), "/approval/expires", "MISSING"),
                row("approval", approval("2022-01-02", "2022-01-01"), "/approval/expires", "BEFORE_ITS_BEGINNING"),
                row("approval", approval("1600-01-01", "2022-01-01"), "/approval/from", "OUT_OF_RANGE"),
                row("approval", approval("soon", "2022-01-01"), "/approval/from", "WRONG_TYPE"));
    }

    private static Map<String, @Nullable Object> approval(@Nullable String from, @Nullable String expires) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("from", from);
        body.put("expires", expires);
        return body;
    }

    private static Arguments row(String field, @Nullable Object value, String pointer, String code) {
        return Arguments.of(field, value, pointer, code);
    }

    @ParameterizedTest
    @MethodSource("wrong")
    void aWrongRequalifierIsRefusedByFieldAndCode(String field, @Nullable Object value, String pointer, String code) {
        var body = Sheets.facility(Sheets.rin());
        body.put(field, value);
        tables.unchangedBy(() -> assertThat(clerk.post("/api/requalifiers", body).expectProblem(400, "INVALID_INPUT")
                .errors()).containsEntry(pointer, code));
    }
}
