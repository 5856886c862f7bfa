package org.collarbook.holds;

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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What cannot be read is refused by field and code, and leaves nothing behind. */
@RegisterTest
class BadHoldsTests {

    private static final String LONG = "n".repeat(1001);

    private final Api.Session clerk;
    private final Given given;
    private final Tables tables;

    BadHoldsTests(Api api, Given given, Tables tables) {
        this.clerk = api.as(Role.CLERK);
        this.given = given;
        this.tables = tables;
    }

    private static Arguments row(String field, @Nullable Object value, String code) {
        return Arguments.of(field, value, code);
    }

    private void refused(String path, Map<String, @Nullable Object> body, String field, @Nullable Object value,
            String code) {
        var wrong = new LinkedHashMap<>(body);
        wrong.put(field, value);
        tables.unchangedBy(() -> {
            var refused = clerk.post(path, wrong).expectProblem(400, "INVALID_INPUT");
            assertThat(refused.errors()).isEqualTo(Map.of("/" + field, code));
            assertThat(refused.text("/errors/0/accepted")).isNotBlank();
        });
    }

    static Stream<Arguments> holds() {
        return Stream.of(row("reason", null, "MISSING"), row("reason", " ", "MISSING"),
                row("reason", "SCRATCHED", "UNKNOWN_WORD"), row("reason", 7, "UNKNOWN_WORD"),
                row("note", LONG, "INVALID_TEXT"), row("note", "a\u0000b", "INVALID_TEXT"),
                row("occurredAt", "2026-11-26T12:00:00Z", "IN_THE_FUTURE"),
                row("occurredAt", "+999999999-01-01T00:00:00Z", "WRONG_TYPE"),
                row("occurredAt", "9999-01-01T00:00:00Z", "IN_THE_FUTURE"),
                row("occurredAt", "1939-12-31T23:59:59Z", "OUT_OF_RANGE"),
                row("occurredAt", "2004-04-20T12:00:00Z", "BEFORE_MANUFACTURE"),
                row("occurredAt", "yesterday", "WRONG_TYPE"), row("until", "2026-12-01", "UNKNOWN_FIELD"));
    }

    @ParameterizedTest
    @MethodSource("holds")
    void aWrongHold(String field, @Nullable Object value, String code) {
        refused("/api/containers/" + given.registered() + "/holds", body("reason", "DENTED"), field, value, code);
    }

    private static Map<String, @Nullable Object> body(Object... pairs) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        for (int i = 0; i < pairs.length; i += 2) {
            body.put(pairs[i].toString(), pairs[i + 1]);
        }
        return body;
    }

    static Stream<Arguments> persons() {
        return Stream.of(row("by", null, "MISSING"),
                row("by", "ANYBODY", "UNKNOWN_WORD"), row("name", null, "MISSING"), row("name", "", "MISSING"),
                row("name", "n".repeat(201), "INVALID_TEXT"), row("qualification", null, "MISSING"),
                row("qualification", "\t", "MISSING"), row("note", LONG, "INVALID_TEXT"),
                row("requalification", "x", "WRONG_TYPE"),
                row("requalification", "01a22a73-0fd0-7074-a0ad-f79919613f38", "NOT_ALLOWED"));
    }

    @ParameterizedTest
    @MethodSource("persons")
    void aWrongInspection(String field, @Nullable Object value, String code) {
        refused(lifts(), body("by", "COMPETENT_PERSON", "name", "R. Amsel", "qualification", "inspector"), field,
                value, code);
    }

    static Stream<Arguments> clerks() {
        return Stream.of(row("note", null, "MISSING"), row("note", LONG, "INVALID_TEXT"),
                row("name", "R. Amsel", "NOT_ALLOWED"), row("qualification", "inspector", "NOT_ALLOWED"));
    }

    @ParameterizedTest
    @MethodSource("clerks")
    void aWrongLiftByTheOffice(String field, @Nullable Object value, String code) {
        refused(lifts(), body("by", "CLERK", "note", "found"), field, value, code);
    }

    static Stream<Arguments> tests() {
        return Stream.of(row("requalification", null, "MISSING"), row("name", "R. Amsel", "NOT_ALLOWED"),
                row("qualification", "inspector", "NOT_ALLOWED"));
    }

    @ParameterizedTest
    @MethodSource("tests")
    void aWrongLiftByATest(String field, @Nullable Object value, String code) {
        refused(lifts(), body("by", "REQUALIFICATION", "requalification", "01a22a73-0fd0-7074-a0ad-f79919613f38"),
                field, value, code);
    }

    private String lifts() {
        return "/api/holds/"
                + clerk.post("/api/containers/" + given.registered() + "/holds", Map.of("reason", "RECALLED"))
                        .expect(201).text("/hold/id")
                + "/lifts";
    }

    static Stream<Arguments> recalls() {
        return Stream.of(row("maker", null, "MISSING"), row("maker", "m".repeat(21), "INVALID_MAKER"),
                row("lot", "l".repeat(201), "INVALID_TEXT"), row("specification", "4BA4BA", "UNKNOWN_SPECIFICATION"),
                row("serialFirst", null, "MISSING"), row("serialLast", null, "MISSING"),
                row("serialFirst", "s".repeat(41), "INVALID_SERIAL"), row("serialLast", "AB0999", "INVALID_RANGE"),
                row("serialLast", "AB19999", "INVALID_RANGE"), row("serialLast", "AC1999", "INVALID_RANGE"),
                row("manufacturedFirst", "5-16", "INVALID_MONTH"), row("manufacturedLast", "2016-13", "INVALID_MONTH"),
                row("manufacturedLast", "1899-12", "INVALID_MONTH"), row("manufacturedLast", "2015-12", "OUT_OF_RANGE"),
                row("issuedBy", null, "MISSING"), row("issuedBy", "i".repeat(201), "INVALID_TEXT"),
                row("reference", "r".repeat(201), "INVALID_TEXT"),
                row("occurredAt", "2026-12-01T00:00:00Z", "IN_THE_FUTURE"), row("serial", "AB1", "UNKNOWN_FIELD"));
    }

    @ParameterizedTest
    @MethodSource("recalls")
    void aWrongRecall(String field, @Nullable Object value, String code) {
        refused("/api/recalls", body("maker", "WRONG", "serialFirst", "AB1000", "serialLast", "AB1999",
                "manufacturedFirst", "2016-01", "manufacturedLast", "2016-06", "issuedBy", "the maker"), field, value,
                code);
    }
}
