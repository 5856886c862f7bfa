package org.collarbook.inspection;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
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
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** 49 CFR 180.211 and 180.215: repairs of the 4 series, kept fifteen years, none of which moves the due month. */
@RegisterTest
class RepairTests {

    private final Api api;
    private final Api.Session yard;
    private final Given given;
    private final Tables tables;

    RepairTests(Api api, Given given, Tables tables) {
        this.api = api;
        this.yard = api.as(Role.YARD);
        this.given = given;
        this.tables = tables;
    }

    private static String path(UUID container) {
        return "/api/containers/" + container + "/repairs";
    }

    private static Map<String, @Nullable Object> repair(String rin) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("performedOn", "2026-11-12");
        body.put("kind", "REPAIR");
        body.put("requalifier", rin);
        body.put("work", "foot ring welded on anew, leak test passed");
        body.put("marksTransferred", true);
        body.put("certification", "Repaired in accordance with 49 CFR 180.211, M. Holt");
        return body;
    }

    @Test
    void aRepairIsKeptAndTheDueMonthStays() {
        var id = given.registered();
        given.moved(id, given.site(null), "2026-11-01T09:00:00Z");
        var rin = Sheets.approved(api);
        yard.post(RequalificationRecordTests.path(id), Sheets.rejected(rin, "2026-11-10")).expect(201);
        var before = api.as(Role.FILLER).get("/api/containers/" + id + "/assessment").expect(200);
        var recorded = yard.post(path(id), repair(rin)).expect(201);
        assertThat(recorded.text("/keepUntil")).isEqualTo("2041-11-12");
        assertThat(recorded.text("/kept/section")).isEqualTo("180.215");
        assertThat(recorded.text("/requalifier/approval/expires")).isEqualTo("2027-01-01");
        var after = api.as(Role.FILLER).get("/api/containers/" + id + "/assessment").expect(200);
        assertThat(after.at("/requirements")).isEqualTo(before.at("/requirements"));
        assertThat(after.text("/status")).as("repaired, not yet requalified").isEqualTo("REJECTED");
        assertThat(yard.get(path(id)).at("/items/0")).isEqualTo(recorded.json());
        tables.unchangedBy(() -> yard.post(path(id), repair(rin)).expectProblem(409, "ALREADY_RECORDED"));
        yard.post(RequalificationRecordTests.path(id), Sheets.volumetric(rin)).expect(201);
        assertThat(api.as(Role.FILLER).get("/api/containers/" + id + "/assessment").text("/status"))
                .isEqualTo("IN_DATE");
    }

    @ParameterizedTest
    @CsvSource({"REPAIR, , 201", "REPAIR, BRAZED, 201", "REHEAT, , 201", "REBUILD, WELDED, 201",
            "REBUILD, BRAZED, 400", "REBUILD, , 400"})
    void brazedSeamsAreNotRebuilt(String kind, @Nullable String seams, int status) {
        var body = repair(Sheets.approved(api));
        body.put("kind", kind);
        body.put("seams", seams);
        var answer = yard.post(path(given.registered()), body).expect(status);
        if (status == 400) {
            assertThat(answer.errors()).isEqualTo(Map.of("/seams", seams == null ? "MISSING" : "BRAZED_SEAMS"));
            assertThat(answer.text("/citations/0/citation/section")).isEqualTo("180.211");
        }
    }

    @ParameterizedTest
    @CsvSource({"DOT-3AA2015", "DOT-3AL1800", "TC-4BAM17", "DOT-8AL"})
    void onlyThe4SeriesIsRepaired(String specification) {
        var cylinder = Given.cylinder();
        cylinder.put("specification", specification);
        var id = given.registered(cylinder);
        var rin = Sheets.approved(api);
        tables.unchangedBy(() -> assertThat(yard.post(path(id), repair(rin)).expectProblem(400, "INVALID_INPUT")
                .errors()).isEqualTo(Map.of("/kind", "NOT_OF_THE_4_SERIES")));
    }

    static Stream<Arguments> wrong() {
        return Stream.of(row("performedOn", null, "MISSING"), row("performedOn", "2026-11-26", "IN_THE_FUTURE"),
                row("performedOn", "2004-04-30", "BEFORE_MANUFACTURE"), row("performedOn", "1700-01-01",
                        "OUT_OF_RANGE"),
                row("kind", null, "MISSING"), row("kind", "PAINT", "UNKNOWN_WORD"),
                row("seams", "GLUED", "UNKNOWN_WORD"), row("requalifier", null, "MISSING"),
                row("requalifier", "123", "INVALID_RIN"), row("requalifier", "Z998", "UNKNOWN_REQUALIFIER"),
                row("work", null, "MISSING"), row("work", "w".repeat(2001), "INVALID_TEXT"),
                row("marksTransferred", null, "MISSING"), row("marksTransferred", false, "MARKS_NOT_TRANSFERRED"),
                row("certification", " ", "MISSING"), row("due", "2038-11", "UNKNOWN_FIELD"));
    }

    private static Arguments row(String field, @Nullable Object value, String code) {
        return Arguments.of(field, value, code);
    }

    @ParameterizedTest
    @MethodSource("wrong")
    void aWrongRepairIsRefusedByFieldAndCode(String field, @Nullable Object value, String code) {
        var id = given.registered();
        var body = repair(Sheets.approved(api));
        body.put(field, value);
        tables.unchangedBy(() -> assertThat(yard.post(path(id), body).expectProblem(400, "INVALID_INPUT").errors())
                .containsEntry("/" + field, code));
    }

    /** 49 CFR 180.203: a condemned cylinder "may not be restored by repair". */
    @Test
    void whatIsCondemnedIsNotRepaired() {
        var id = given.registered();
        var rin = Sheets.approved(api);
        yard.post(RequalificationRecordTests.path(id), Sheets.condemned(rin)).expect(201);
        tables.unchangedBy(() -> yard.post(path(id), repair(rin)).expectProblem(409, "CONDEMNED"));
    }

    /** The first stays on record beside what took its place, and each is corrected once. */
    @Test
    void aRepairRecordedByMistakeIsCorrected() {
        var id = given.registered();
        var rin = Sheets.approved(api);
        var mistaken = yard.post(path(id), repair(rin)).expect(201);
        var corrections = "/api/repairs/" + mistaken.id() + "/corrections";
        var meant = repair(rin);
        meant.put("certification", "Repaired in accordance with 49 CFR 180.211, R. Amsel");
        var instead = yard.post(corrections, Sheets.correction("another hand signed it", meant)).expect(201);
        assertThat(yard.get(path(id)).at("/items")).containsExactly(instead.json());
        var all = yard.get(path(id) + "?all=true").expect(200);
        assertThat(all.at("/items")).hasSize(2);
        assertThat(all.text("/items/1/id")).isEqualTo(mistaken.id());
        assertThat(all.text("/items/1/corrected/replacedBy")).isEqualTo(instead.id());
        assertThat(all.text("/items/1/corrected/reason")).isEqualTo("another hand signed it");
        tables.unchangedBy(() -> {
            assertThat(yard.post(corrections, Sheets.correction("again", null)).expectProblem(409, "ALREADY_CORRECTED")
                    .text("/replacedBy")).isEqualTo(instead.id());
            assertThat(yard.post(path(id), meant).expectProblem(409, "ALREADY_RECORDED").text("/repair"))
                    .isEqualTo(instead.id());
        });

        var empty = "/api/repairs/" + instead.id() + "/corrections";
        yard.post(empty, Sheets.correction("it was another cylinder", null)).expect(201);
        assertThat(yard.get(path(id)).at("/items")).isEmpty();
        // what was corrected away may be recorded once more
        yard.post(path(id), meant).expect(201);
    }

    static Stream<Arguments> wrongCorrections() {
        var wrong = repair("A000");
        wrong.put("kind", "PAINT");
        return Stream.of(Arguments.of(Map.of("void", true), "/reason"), Arguments.of(Map.of("reason", "r"), "/record"),
                Arguments.of(Map.of("reason", "r", "void", true, "record", repair("A000")), "/record"),
                Arguments.of(Map.of("reason", "r", "record", wrong), "/record/kind"));
    }

    @ParameterizedTest
    @MethodSource("wrongCorrections")
    void aWrongCorrectionIsRefused(Map<String, Object> body, String pointer) {
        var id = given.registered();
        var mistaken = yard.post(path(id), repair(Sheets.approved(api))).expect(201);
        tables.unchangedBy(() -> {
            assertThat(yard.post("/api/repairs/" + mistaken.id() + "/corrections", body)
                    .expectProblem(400, "INVALID_INPUT").errors()).containsKey(pointer);
            yard.post("/api/repairs/" + UUID.randomUUID() + "/corrections", body).expectProblem(404, "NOT_FOUND");
        });
    }
}
