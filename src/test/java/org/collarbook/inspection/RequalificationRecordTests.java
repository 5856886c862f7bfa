package org.collarbook.inspection;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
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
import org.springframework.jdbc.core.simple.JdbcClient;

/** A record goes in, and what follows from it is true at once. The cylinder is a 4BA240 of May 2004. */
@RegisterTest
class RequalificationRecordTests {

    private final Api api;
    private final Api.Session yard;
    private final Given given;
    private final Tables tables;
    private final TestClock clock;
    private final JdbcClient jdbc;

    RequalificationRecordTests(Api api, Given given, Tables tables, TestClock clock, JdbcClient jdbc) {
        this.api = api;
        this.yard = api.as(Role.YARD);
        this.given = given;
        this.tables = tables;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    static String path(UUID container) {
        return "/api/containers/" + container + "/requalifications";
    }

    private UUID inTheUs() {
        return inTheUs(Given.cylinder());
    }

    private UUID inTheUs(Map<String, @Nullable Object> cylinder) {
        var id = given.registered(cylinder);
        given.moved(id, given.site(null), "2026-11-01T09:00:00Z");
        return id;
    }

    private Answer assessed(UUID id) {
        return api.as(Role.FILLER).get("/api/containers/" + id + "/assessment").expect(200);
    }

    private @Nullable LocalDate due(UUID id) {
        return jdbc.sql("select due from requirement where container_id = ? and requirement = 'SHELL'").param(id)
                .query((row, number) -> row.getObject(1, LocalDate.class)).optional().orElse(null);
    }

    /** 49 CFR 180.209(e) and (g): coated, in exclusive LP-gas service 12 years, after a proof test 10, a look 5. */
    @ParameterizedTest
    @CsvSource({"VOLUMETRIC_EXPANSION, 2038-11", "PROOF_PRESSURE, 2036-11", "EXTERNAL_VISUAL, 2031-11"})
    void aPassedRecordMovesTheDueMonthAtOnce(String method, String month) {
        var id = inTheUs();
        assertThat(assessed(id).text("/status")).isEqualTo("OVERDUE");
        var rin = Sheets.approved(api);
        var sheet = switch (method) {
            case "VOLUMETRIC_EXPANSION" -> Sheets.volumetric(rin);
            case "PROOF_PRESSURE" -> Sheets.proof(rin);
            default -> Sheets.visual(rin);
        };
        var recorded = yard.post(path(id), sheet).expect(201);
        assertThat(recorded.text("/result")).isEqualTo("PASSED");
        assertThat(due(id)).isEqualTo(month + "-01");
        var after = assessed(id);
        assertThat(after.text("/status")).isEqualTo("IN_DATE");
        assertThat(after.at("/mayFill").asBoolean()).isTrue();
    }

    /** The contents of 49 CFR 180.215(b), each read back as it was told. */
    @Test
    void theFullContentsAreKept() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        var sheet = Sheets.volumetric(rin);
        sheet.put("repeats", List.of(Map.of("testPressurePsig", 470, "reason", "APPARATUS_FAILED", "note", "O-ring",
                "expansion", Map.of("total", "90 cm3", "permanent", "80 cm3"))));
        sheet.put("disposition", "passed after a repeat, returned to service");
        sheet.put("coating", "painted");
        sheet.put("owner", "Owner and Sons");
        sheet.put("tareLb", 16.9);
        var recorded = yard.post(path(id), sheet).expect(201);
        assertThat(recorded.header("Location")).isEqualTo("/api/requalifications/" + recorded.id());
        var read = api.as(Role.FILLER).get("/api/requalifications/" + recorded.id()).expect(200);
        assertThat(read.json()).isEqualTo(recorded.json());

        assertThat(read.text("/containerId")).isEqualTo(id.toString());
        assertThat(read.text("/performedOn")).isEqualTo("2026-11-20");
        assertThat(read.text("/month")).isEqualTo("2026-11");
        assertThat(read.text("/rin")).isEqualTo(rin);
        assertThat(read.text("/record/requalifier/approval/expires")).isEqualTo("2027-01-01");
        assertThat(read.at("/record/visual")).hasSize(3);
        assertThat(read.text("/record/visual/0/item")).isEqualTo("CORROSION");
        assertThat(read.text("/record/visual/2/finding")).isEqualTo("NOT_APPLICABLE");
        assertThat(read.at("/record/markedPressurePsig").asInt()).isEqualTo(240);
        assertThat(read.at("/record/testPressurePsig").asInt()).isEqualTo(480);
        assertThat(read.at("/record/minimumTestPressurePsig").decimalValue()).isEqualByComparingTo("480");
        assertThat(read.text("/record/expansion/elastic")).isEqualTo("62.1 cm3");
        // 1.1 / 63.2 = 1.7405 %
        assertThat(read.at("/record/expansion/permanentPercent").decimalValue()).isEqualByComparingTo("1.75");
        assertThat(read.at("/record/expansion/limitPercent").decimalValue()).isEqualByComparingTo("10");
        assertThat(read.text("/record/repeats/0/note")).isEqualTo("O-ring");
        assertThat(read.text("/record/repeats/0/expansion/permanent")).isEqualTo("80 cm3");
        assertThat(read.text("/record/operator")).isEqualTo("M. Holt");
        // (17.0 - 16.9) / 17.0 = 0.588 %
        assertThat(read.at("/record/tareLossPercent").decimalValue()).isEqualByComparingTo("0.58");
        assertThat(read.at("/record/reasons").findValuesAsString("code")).contains("EXPANSION_WITHIN_LIMIT",
                "TEST_PRESSURE_SUFFICES", "NO_DEFECT_FOUND", "TEST_REPEATED");
        read.at("/record/reasons").forEach(reason -> {
            assertThat(reason.at("/citation/section").asString()).as(reason.toString()).isNotBlank();
            assertThat(reason.at("/citation/edition").asString()).as(reason.toString()).isNotBlank();
        });
    }

    /** 49 CFR 180.205(i): at 10 % it passes, just over it is condemned, and then for good. */
    @Test
    void whatIsCondemnedStaysCondemned() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        var sheet = Sheets.volumetric(rin);
        sheet.put("expansion", Sheets.expansion("200 cm3", null, "20 cm3"));
        assertThat(yard.post(path(id), sheet).expect(201).text("/result")).isEqualTo("PASSED");

        var over = inTheUs();
        sheet.put("expansion", Sheets.expansion("200 cm3", null, "20.02 cm3"));
        sheet.put("disposition", "condemned, X's over the marks");
        var condemned = yard.post(path(over), sheet).expect(201);
        assertThat(condemned.text("/result")).isEqualTo("CONDEMNED");
        assertThat(assessed(over).text("/status")).isEqualTo("CONDEMNED");
        tables.unchangedBy(() -> {
            var refused = yard.post(path(over), Sheets.visual(rin)).expectProblem(409, "CONDEMNED");
            assertThat(refused.text("/requalification")).isEqualTo(condemned.id());
            assertThat(refused.text("/citation/section")).contains("180.203");
            api.as(Role.ADMINISTRATOR).post(path(over), Sheets.volumetric(rin)).expectProblem(409, "CONDEMNED");
        });
    }

    @Test
    void a4ESeparatesAtTwelvePercent() {
        var rin = Sheets.approved(api);
        for (var row : Map.of("12 cm3", "PASSED", "12.01 cm3", "CONDEMNED").entrySet()) {
            var cylinder = Given.cylinder();
            cylinder.put("specification", "DOT-4E240");
            var sheet = Sheets.volumetric(rin);
            sheet.put("expansion", Sheets.expansion("100 cm3", null, row.getKey()));
            sheet.put("disposition", "as computed");
            assertThat(yard.post(path(inTheUs(cylinder)), sheet).expect(201).text("/result"))
                    .isEqualTo(row.getValue());
        }
    }

    /** Out until it is repaired and requalified; where the days are known, the same month is late enough. */
    @Test
    void whatIsRejectedIsOutUntilALaterTestIsPassed() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        yard.post(path(id), Sheets.rejected(rin, "2026-11-10")).expect(201);
        assertThat(assessed(id).text("/status")).isEqualTo("REJECTED");
        var earlier = Sheets.visual(rin);
        earlier.put("performedOn", "2026-11-09");
        yard.post(path(id), earlier).expect(201);
        var sameDay = Sheets.proof(rin);
        sameDay.put("performedOn", "2026-11-10");
        yard.post(path(id), sameDay).expect(201);
        assertThat(assessed(id).text("/status")).as("no later day").isEqualTo("REJECTED");
        yard.post(path(id), Sheets.volumetric(rin)).expect(201);
        assertThat(assessed(id).text("/status")).isEqualTo("IN_DATE");
        yard.post(path(id), Sheets.rejected(rin, "2026-11-21")).expect(201);
        assertThat(assessed(id).text("/status")).as("rejected anew").isEqualTo("REJECTED");
    }

    /** 49 CFR 180.203: it is repaired or rebuilt, and requalified; a look from outside the next day is not that. */
    @Test
    void whatFailedATestOfTheWholeIsNotClearedByALookOfTheSameMonth() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        var failed = Sheets.proof(rin);
        failed.put("performedOn", "2026-11-10");
        failed.put("visual", Sheets.looked("DENTS", "DEFECT"));
        failed.put("disposition", "to the maker for repair");
        assertThat(yard.post(path(id), failed).expect(201).text("/result")).isEqualTo("REJECTED");
        var look = Sheets.visual(rin);
        look.put("performedOn", "2026-11-12");
        assertThat(yard.post(path(id), look).expect(201).text("/result")).isEqualTo("PASSED");
        assertThat(assessed(id).text("/status")).isEqualTo("REJECTED");
        yard.post(path(id), Sheets.volumetric(rin)).expect(201);
        assertThat(assessed(id).text("/status")).isEqualTo("IN_DATE");
    }

    /** 49 CFR 180.209(c): 5 % of 17.0 lb are 0.85 lb. */
    @Test
    void lostTareIsNotAnsweredByALook() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        var before = Sheets.volumetric(rin);
        before.put("performedOn", "2026-11-02");
        yard.post(path(id), before).expect(201);
        var sheet = Sheets.visual(rin);
        sheet.put("tareLb", 16.15);
        sheet.put("disposition", "to the test bench");
        var recorded = yard.post(path(id), sheet).expect(201);
        assertThat(recorded.text("/result")).isEqualTo("REJECTED");
        assertThat(recorded.at("/record/reasons").findValuesAsString("code")).contains("TARE_LOSS");
        assertThat(assessed(id).at("/mayFill").asBoolean()).isFalse();
        var lookedAgain = Sheets.visual(rin);
        lookedAgain.put("performedOn", "2026-11-21");
        lookedAgain.put("disposition", "to the test bench");
        var again = yard.post(path(id), lookedAgain).expect(201);
        assertThat(again.text("/result")).as("not weighed, not cleared").isEqualTo("REJECTED");
        var sheetOfTest = Sheets.volumetric(rin);
        sheetOfTest.put("performedOn", "2026-11-22");
        sheetOfTest.put("tareLb", 16.15);
        assertThat(yard.post(path(id), sheetOfTest).expect(201).text("/result")).isEqualTo("PASSED");
        assertThat(assessed(id).text("/status")).isEqualTo("IN_DATE");
        lookedAgain.put("performedOn", "2026-11-23");
        assertThat(yard.post(path(id), lookedAgain).expect(201).text("/result")).as("answered").isEqualTo("PASSED");
    }

    /** A part has a record of its own: day, person, note; no facility and no measurements. */
    @Test
    void aPartIsRecordedByDayAndPerson() {
        var id = inTheUs();
        var recorded = yard.post(path(id), Map.of("performedOn", "2026-11-20", "method", "VALVE_REPLACED", "operator",
                "M. Holt", "note", "new relief valve")).expect(201);
        assertThat(recorded.text("/result")).isEqualTo("PASSED");
        assertThat(recorded.text("/record/note")).isEqualTo("new relief valve");
        assertThat(assessed(id).text("/status")).as("the shell is as it was").isEqualTo("OVERDUE");
    }

    private static Map<String, @Nullable Object> cargoTank() {
        var body = Given.cylinder();
        body.put("kind", "CARGO_TANK");
        body.put("specification", "MC-331");
        body.put("waterCapacity", "3000 gal");
        body.put("tare", null);
        body.put("servicePressure", "250");
        return body;
    }

    /** An annual leakage test, 49 CFR 180.407(c): of an MC 331 by whoever inspects it. */
    @Test
    void aTankIsTestedByItsLetters() {
        var id = inTheUs(cargoTank());
        var sheet = Map.of("performedOn", "2026-11-20", "method", "K", "operator", "M. Holt", "markedPressurePsig",
                250, "testPressurePsig", 200);
        yard.post(path(id), sheet).expect(201);
        assertThat(jdbc.sql("select due from requirement where container_id = ? and requirement = 'LEAKAGE'")
                .param(id).query(LocalDate.class).single()).isEqualTo("2027-11-01");
        tables.unchangedBy(() -> assertThat(yard.post(path(id), Sheets.volumetric(Sheets.rin()))
                .expectProblem(400, "INVALID_INPUT").errors()).containsEntry("/method", "NOT_FOR_THIS_KIND"));
    }

    /** 49 CFR 180.407(h): a tank that fails the leakage test is repaired and tested again. */
    @Test
    void aTankThatFailedALetterIsClearedByThatLetter() {
        var id = inTheUs(cargoTank());
        recordLetter(id, "K", "2026-11-03", "DEFECT");
        assertThat(assessed(id).text("/status")).isEqualTo("REJECTED");
        recordLetter(id, "V", "2026-11-04", "SATISFACTORY");
        assertThat(assessed(id).text("/status")).as("another letter").isEqualTo("REJECTED");
        recordLetter(id, "K", "2026-11-05", "SATISFACTORY");
        assertThat(assessed(id).text("/status")).isNotEqualTo("REJECTED");
    }

    private void recordLetter(UUID id, String letter, String day, String finding) {
        var sheet = new LinkedHashMap<String, Object>(Map.of("performedOn", day, "method", letter, "operator",
                "M. Holt", "visual", Sheets.looked("CORROSION", finding), "disposition", "to the repair shop"));
        if (letter.equals("K")) {
            sheet.put("markedPressurePsig", 250);
            sheet.put("testPressurePsig", 200);
        }
        yard.post(path(id), sheet).expect(201);
    }

    /** 49 CFR 180.205(b); a RIN that lapses later leaves the record as it is. */
    @Test
    void aRinCountsOnTheDayOfTheTest() {
        var id = inTheUs();
        var rin = Sheets.rin();
        var facility = Sheets.registered(api, rin);
        var recorded = yard.post(path(id), Sheets.visual(rin)).expect(201);

        var lapsed = Sheets.facility(rin);
        lapsed.put("approval", Map.of("from", "2022-01-01", "expires", "2026-11-19"));
        api.as(Role.CLERK).ifMatch(facility).put("/api/requalifiers/" + facility.id(), lapsed).expect(200);
        assertThat(yard.get("/api/requalifications/" + recorded.id()).text("/record/requalifier/approval/expires"))
                .isEqualTo("2027-01-01");
        assertThat(assessed(id).text("/status")).isEqualTo("IN_DATE");

        var other = inTheUs();
        tables.unchangedBy(() -> {
            var refused = yard.post(path(other), Sheets.visual(rin)).expectProblem(400, "INVALID_INPUT");
            assertThat(refused.errors()).isEqualTo(Map.of("/requalifier", "RIN_EXPIRED"));
            assertThat(refused.text("/citations/0/citation/section")).isEqualTo("180.205(b)");
        });
        var lastDay = Sheets.visual(rin);
        lastDay.put("performedOn", "2026-11-19");
        yard.post(path(other), lastDay).expect(201);
        tables.unchangedBy(() -> {
            var early = Sheets.visual(rin);
            early.put("performedOn", "2021-12-31");
            assertThat(yard.post(path(other), early).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/requalifier", "RIN_NOT_YET_APPROVED"));
        });
    }

    /** 49 CFR 180.209(g), 180.213: marks up to May 2004 need no RIN. */
    @Test
    void anOldRecordMayHaveNoRin() {
        var cylinder = Given.cylinder();
        cylinder.put("manufactured", "5-90");
        var id = inTheUs(cylinder);
        var old = Sheets.visual("");
        old.put("performedOn", "2004-05-31");
        yard.post(path(id), old).expect(201);
        old.put("performedOn", "2004-06-01");
        tables.unchangedBy(() -> assertThat(yard.post(path(id), old).expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("/requalifier", "MISSING")));
    }

    /** At noon in UTC on the last of November it is December on Kiritimati, fourteen hours ahead. */
    @Test
    void theDayIsThatOfTheSite() {
        var east = Given.depot();
        east.put("zone", "Pacific/Kiritimati");
        var site = UUID.fromString(api.as(Role.CLERK).post("/api/sites", east).expect(201).id());
        var id = given.registered();
        given.moved(id, site, "2026-11-01T09:00:00Z");
        clock.set(LocalDate.of(2026, 11, 30));
        var sheet = Sheets.visual(Sheets.approved(api));
        sheet.put("performedOn", "2026-12-01");
        yard.post(path(id), sheet).expect(201);
        assertThat(yard.post(path(inTheUs()), sheet).expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("/performedOn", "IN_THE_FUTURE"));
    }

    @Test
    void aRepeatUnderTheSameKeyRecordsOnceAndADuplicateIsRefused() {
        var id = inTheUs();
        var sheet = Sheets.visual(Sheets.approved(api));
        var once = yard.with("Idempotency-Key", Given.serial());
        var first = once.post(path(id), sheet).expect(201);
        tables.unchangedBy(() -> {
            assertThat(once.post(path(id), sheet).expect(201).json()).isEqualTo(first.json());
            var refused = yard.post(path(id), sheet).expectProblem(409, "ALREADY_RECORDED");
            assertThat(refused.text("/requalification")).isEqualTo(first.id());
        });
        sheet.put("performedOn", "2026-11-21");
        yard.post(path(id), sheet).expect(201);
    }

    @Test
    void theyAreListedByPagesTheNewestFirst() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        for (var day : List.of("2024-03-05", "2026-11-20", "2024-03-06", "2023-01-31", "2024-03-04")) {
            var sheet = Sheets.visual(rin);
            sheet.put("performedOn", day);
            yard.post(path(id), sheet).expect(201);
        }
        var days = new java.util.ArrayList<String>();
        @Nullable
        String cursor = "";
        for (int pages = 0; cursor != null && pages < 9; pages++) {
            var page = yard.get(path(id) + "?size=2" + (cursor.isEmpty() ? "" : "&cursor=" + cursor)).expect(200);
            days.addAll(page.at("/items").findValuesAsString("performedOn"));
            cursor = page.at("/next").isString() ? page.text("/next") : null;
        }
        assertThat(days).containsExactly("2026-11-20", "2024-03-06", "2024-03-05", "2024-03-04", "2023-01-31");
        assertThat(yard.get(path(id) + "?cursor=nonsense").expectProblem(400, "INVALID_INPUT").errors())
                .containsValue("INVALID_CURSOR");
    }
}
