package org.collarbook.inspection;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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

/** What is wrong with a record is told by place and code, and nothing of it is stored. */
@RegisterTest
class RequalificationRefusalTests {

    private static final String NOBODY = "00000000-0000-7000-8000-000000000000";

    private final Api api;
    private final Api.Session yard;
    private final Given given;
    private final Tables tables;

    RequalificationRefusalTests(Api api, Given given, Tables tables) {
        this.api = api;
        this.yard = api.as(Role.YARD);
        this.given = given;
        this.tables = tables;
    }

    private static Arguments row(String method, String field, @Nullable Object value, String pointer, String code) {
        return Arguments.of(method, field, value, pointer, code);
    }

    private static Map<String, @Nullable Object> attempt(@Nullable Object psig, @Nullable String reason,
            @Nullable String note) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("testPressurePsig", psig);
        body.put("reason", reason);
        body.put("note", note);
        return body;
    }

    /** Required by method: 49 CFR 180.215(b) and 180.209(g); letters 21-0100 and 21-0101 of PHMSA say what is not. */
    static Stream<Arguments> missingOrTooMuch() {
        return Stream.of(row("V", "performedOn", null, "/performedOn", "MISSING"),
                row("V", "method", null, "/method", "MISSING"), row("V", "operator", " ", "/operator", "MISSING"),
                row("V", "requalifier", null, "/requalifier", "MISSING"),
                row("V", "visual", null, "/visual", "MISSING"),
                row("V", "visual", Map.of("items", List.of()), "/visual", "MISSING"),
                row("V", "expansion", null, "/expansion", "MISSING"),
                row("V", "markedPressurePsig", null, "/markedPressurePsig", "MISSING"),
                row("V", "testPressurePsig", null, "/testPressurePsig", "MISSING"),
                row("S", "testPressurePsig", null, "/testPressurePsig", "MISSING"),
                row("S", "visual", null, "/visual", "MISSING"),
                row("S", "expansion", Sheets.expansion("63.2 cm3", null, "1.1 cm3"), "/expansion", "NOT_ALLOWED"),
                row("S", "limitPercent", 10, "/limitPercent", "NOT_ALLOWED"),
                row("E", "visual", null, "/visual", "MISSING"), row("E", "coating", null, "/coating", "MISSING"),
                row("E", "owner", null, "/owner", "MISSING"),
                row("E", "testPressurePsig", 480, "/testPressurePsig", "NOT_ALLOWED"),
                row("E", "markedPressurePsig", 240, "/markedPressurePsig", "NOT_ALLOWED"),
                row("E", "expansion", Sheets.expansion("63.2 cm3", null, "1.1 cm3"), "/expansion", "NOT_ALLOWED"),
                row("E", "repeats", List.of(attempt(480, "APPARATUS_FAILED", "O-ring")), "/repeats", "NOT_ALLOWED"),
                row("R", "repeats", List.of(attempt(480, "APPARATUS_FAILED", "O-ring")), "/repeats", "NOT_ALLOWED"),
                row("R", "tareLb", 17, "/tareLb", "NOT_ALLOWED"),
                row("R", "testPressurePsig", 480, "/testPressurePsig", "NOT_ALLOWED"),
                row("R", "operator", null, "/operator", "MISSING"));
    }

    static Stream<Arguments> wrong() {
        return Stream.of(row("V", "performedOn", "2026-11-26", "/performedOn", "IN_THE_FUTURE"),
                row("V", "performedOn", "2004-04-30", "/performedOn", "BEFORE_MANUFACTURE"),
                row("V", "performedOn", "1899-12-31", "/performedOn", "OUT_OF_RANGE"),
                row("V", "performedOn", "11/20/2026", "/performedOn", "WRONG_TYPE"),
                row("V", "method", "POLISHED", "/method", "UNKNOWN_WORD"),
                row("V", "method", "EXTINGUISHER_INSPECTED", "/method", "UNKNOWN_WORD"),
                row("V", "requalifier", "A12", "/requalifier", "INVALID_RIN"),
                row("V", "requalifier", "12A3", "/requalifier", "INVALID_RIN"),
                row("V", "requalifier", "Z999", "/requalifier", "UNKNOWN_REQUALIFIER"),
                row("V", "testPressurePsig", 479, "/testPressurePsig", "TEST_PRESSURE_TOO_LOW"),
                row("V", "testPressurePsig", 0, "/testPressurePsig", "OUT_OF_RANGE"),
                row("V", "testPressurePsig", 20_001, "/testPressurePsig", "OUT_OF_RANGE"),
                row("V", "testPressurePsig", "high", "/testPressurePsig", "WRONG_TYPE"),
                row("V", "markedPressurePsig", 250, "/markedPressurePsig", "DIFFERS_FROM_REGISTER"),
                row("V", "expansion", Sheets.expansion(null, null, "1 cm3"), "/expansion/total", "MISSING"),
                row("V", "expansion", Sheets.expansion("63.2 cm3", null, null), "/expansion/permanent", "MISSING"),
                row("V", "expansion", Sheets.expansion("63.2", null, "1 cm3"), "/expansion/total", "INVALID_VOLUME"),
                row("V", "expansion", Sheets.expansion("63.2 in3", null, "1 cm3"), "/expansion/total",
                        "INVALID_VOLUME"),
                row("V", "expansion", Sheets.expansion("-63.2 cm3", null, "1 cm3"), "/expansion/total",
                        "INVALID_VOLUME"),
                row("V", "expansion", Sheets.expansion("63.2345 cm3", null, "1 cm3"), "/expansion/total",
                        "INVALID_VOLUME"),
                row("V", "expansion", Sheets.expansion("1e9 cm3", null, "1 cm3"), "/expansion/total",
                        "INVALID_VOLUME"),
                row("V", "expansion", Sheets.expansion("0 cm3", null, "0 cm3"), "/expansion/total", "OUT_OF_RANGE"),
                row("V", "expansion", Sheets.expansion("63.2 cm3", null, "63.3 cm3"), "/expansion/permanent",
                        "OUT_OF_RANGE"),
                row("V", "expansion", Sheets.expansion("63.2 cm3", "62.0 cm3", "1.1 cm3"), "/expansion/elastic",
                        "DOES_NOT_ADD_UP"),
                row("V", "limitPercent", 10, "/limitPercent", "NOT_ALLOWED"),
                row("V", "star", true, "/star", "NOT_ALLOWED"), row("V", "plus", true, "/plus", "NOT_ALLOWED"),
                row("E", "tareLb", 0, "/tareLb", "OUT_OF_RANGE"), row("E", "tareLb", -17, "/tareLb", "OUT_OF_RANGE"),
                row("E", "tareLb", 34.1, "/tareLb", "OUT_OF_RANGE"),
                row("E", "tareLb", 17.0001, "/tareLb", "OUT_OF_RANGE"),
                row("E", "grounds", List.of("RUST"), "/grounds/0", "UNKNOWN_WORD"),
                row("E", "grounds", List.of("LEAK_THROUGH_WALL", "LEAK_THROUGH_WALL"), "/grounds/1", "TOLD_TWICE"),
                row("E", "grounds", List.of("DENT_OR_BULGE_OF_3HT"), "/grounds/0", "NOT_FOR_THIS_SPECIFICATION"),
                row("E", "visual", Sheets.looked("SMELL", "SATISFACTORY"), "/visual/items/0/item", "UNKNOWN_WORD"),
                row("E", "visual", Sheets.looked("DENTS", "FINE"), "/visual/items/0/finding", "UNKNOWN_WORD"),
                row("E", "visual", Sheets.looked("DENTS", "SATISFACTORY", "DENTS", "SATISFACTORY"),
                        "/visual/items/1/item", "TOLD_TWICE"),
                row("E", "visual", Sheets.looked("DENTS", "NOT_APPLICABLE"), "/visual/items", "NOTHING_INSPECTED"),
                row("E", "visual", Map.of("items", List.of(Map.of("item", "DENTS", "finding", "DEFECT"))),
                        "/visual/items/0/note", "MISSING"),
                row("E", "visual", Map.of("items", List.of(Map.of("item", "OTHER", "finding", "SATISFACTORY"))),
                        "/visual/items/0/note", "MISSING"),
                row("E", "visual", Map.of("items", List.of(Map.of("item", "DENTS"))), "/visual/items/0/finding",
                        "MISSING"),
                row("E", "visual", Map.of("items", List.of(Map.of())), "/visual/items/0/item", "MISSING"),
                row("E", "visual", Sheets.looked("DENTS", "DEFECT"), "/disposition", "MISSING"),
                row("E", "note", "n".repeat(1001), "/note", "INVALID_TEXT"),
                row("E", "operator", "a\u0000b", "/operator", "INVALID_TEXT"),
                row("E", "result", "PASSED", "/result", "UNKNOWN_FIELD"),
                row("E", "method", "V", "/method", "NOT_FOR_THIS_KIND"),
                row("R", "method", "HOSE_TESTED", "/method", "NOT_FOR_THIS_KIND"));
    }

    /** 49 CFR 180.205(g)(5): a repeat after the apparatus failed, 10 % or 100 psi higher at most. */
    static Stream<Arguments> wrongRepeats() {
        return Stream.of(row("V", "repeats", List.of(attempt(436, "APPARATUS_FAILED", "O-ring")),
                "/testPressurePsig", "REPEAT_PRESSURE_TOO_HIGH"),
                row("V", "repeats", List.of(attempt(480, "WANTED_ANOTHER", "x")), "/repeats/0/reason",
                        "REPEAT_NOT_ALLOWED"),
                row("V", "repeats", List.of(attempt(480, null, "x")), "/repeats/0/reason", "REPEAT_NOT_ALLOWED"),
                row("V", "repeats", List.of(attempt(480, "APPARATUS_FAILED", null)), "/repeats/0/note", "MISSING"),
                row("V", "repeats", List.of(attempt(null, "APPARATUS_FAILED", "x")), "/repeats/0/testPressurePsig",
                        "MISSING"),
                row("V", "repeats",
                        List.of(attempt(480, "APPARATUS_FAILED", "x"), attempt(529, "APPARATUS_FAILED", "y")),
                        "/repeats/1/testPressurePsig", "REPEAT_PRESSURE_TOO_HIGH"),
                row("V", "repeats", java.util.Collections.nCopies(11, attempt(480, "APPARATUS_FAILED", "x")),
                        "/repeats", "TOO_MANY"));
    }

    private static Map<String, @Nullable Object> sheet(String kind, String rin) {
        return switch (kind) {
            case "V" -> Sheets.volumetric(rin);
            case "S" -> Sheets.proof(rin);
            case "E" -> Sheets.visual(rin);
            default -> {
                var body = new LinkedHashMap<String, @Nullable Object>();
                body.put("performedOn", "2026-11-20");
                body.put("method", "VALVE_REPLACED");
                body.put("operator", "M. Holt");
                yield body;
            }
        };
    }

    @ParameterizedTest
    @MethodSource({"missingOrTooMuch", "wrong", "wrongRepeats"})
    void aWrongRecordIsRefusedByPlaceAndCode(String kind, String field, @Nullable Object value, String pointer,
            String code) {
        var path = RequalificationRecordTests.path(given.registered());
        var body = sheet(kind, Sheets.approved(api));
        body.put(field, value);
        if (field.equals("repeats")) {
            body.put("disposition", "repeated");
        }
        tables.unchangedBy(() -> {
            var refused = yard.post(path, body).expectProblem(400, "INVALID_INPUT");
            assertThat(refused.errors()).containsEntry(pointer, code);
            refused.at("/errors").forEach(
                    error -> assertThat(error.at("/accepted").asString()).as(error.toString()).isNotBlank());
        });
    }

    /** A refusal that rests on a rule names it, in words and as a citation. */
    @Test
    void theRuleIsNamed() {
        var path = RequalificationRecordTests.path(given.registered());
        var body = Sheets.volumetric(Sheets.approved(api));
        body.put("testPressurePsig", 300);
        var refused = yard.post(path, body).expectProblem(400, "INVALID_INPUT");
        assertThat(refused.text("/errors/0/accepted")).contains("480 psig", "2 times the marked 240 psig",
                "49 CFR 180.209(a) Table 1");
        assertThat(refused.text("/citations/0/pointer")).isEqualTo("/testPressurePsig");
        assertThat(refused.text("/citations/0/citation/basis")).isEqualTo("TEXT");
    }

    @Test
    void allThatIsWrongIsToldAtOnce() {
        var path = RequalificationRecordTests.path(given.registered());
        tables.unchangedBy(() -> {
            var refused = yard.post(path, Map.of("method", "VOLUMETRIC_EXPANSION", "requalifier", "?"))
                    .expectProblem(400, "INVALID_INPUT");
            assertThat(Objects.requireNonNull(refused.errors())).isEqualTo(Map.of("/performedOn", "MISSING",
                    "/operator", "MISSING", "/requalifier", "INVALID_RIN", "/visual", "MISSING",
                    "/markedPressurePsig", "MISSING", "/testPressurePsig", "MISSING", "/expansion", "MISSING"));
        });
    }

    @Test
    void aNumberOfManyDigitsIsRefusedInLittleTime() {
        var path = RequalificationRecordTests.path(given.registered());
        tables.unchangedBy(() -> yard.post(path, """
                {"performedOn": "2026-11-20", "method": "EXTERNAL_VISUAL", "tareLb": 1e999999999}""")
                .expectProblem(400, "INVALID_INPUT"));
    }

    @Test
    void unknownContainersAndRecordsAreNotFound() {
        tables.unchangedBy(() -> {
            yard.post("/api/containers/" + NOBODY + "/requalifications", Sheets.visual("A123"))
                    .expectProblem(404, "NOT_FOUND");
            yard.get("/api/containers/" + NOBODY + "/requalifications").expectProblem(404, "NOT_FOUND");
            yard.get("/api/requalifications/" + NOBODY).expectProblem(404, "NOT_FOUND");
            yard.post("/api/requalifications/" + NOBODY + "/corrections", Sheets.correction("x", null))
                    .expectProblem(404, "NOT_FOUND");
            yard.post("/api/containers/" + NOBODY + "/repairs", Map.of()).expectProblem(404, "NOT_FOUND");
            yard.get("/api/containers/" + NOBODY + "/repairs").expectProblem(404, "NOT_FOUND");
        });
    }
}
