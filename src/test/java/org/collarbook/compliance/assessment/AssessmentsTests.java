package org.collarbook.compliance.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@RegisterTest
class AssessmentsTests {

    private static final String EXAMPLE = """
            {"asOf":"2026-11-25","jurisdiction":"US",
             "container":{"kind":"CYLINDER","specification":"DOT-4BA240","manufactured":"2004-05",
               "waterCapacity":"47.6 lb","coated":true,
               "service":{"lading":"LPG","exclusive":true,"corrosionFree":true}},
             "requalifications":[%s],
             "filledOn":"2021-05-20"}""";

    private final Api api;

    AssessmentsTests(Api api) {
        this.api = api;
    }

    private Answer assess(String body) {
        return api.as(Role.FILLER).post("/api/assessments", body);
    }

    private static List<String> texts(Answer answer, String pointer) {
        var texts = new ArrayList<String>();
        answer.at(pointer).forEach(text -> texts.add(text.asString()));
        return texts;
    }

    /** The contract's own exchange; 49 CFR 180.209(g): five years from an external visual inspection. */
    @ParameterizedTest
    @ValueSource(strings = {"{\"month\":\"2016-05\",\"method\":\"EXTERNAL_VISUAL\"}", "{\"mark\":\"5-16E\"}"})
    void answersTheContractsExample(String requalification) {
        var answer = assess(EXAMPLE.formatted(requalification)).expect(200);
        assertThat(answer.text("/asOf")).isEqualTo("2026-11-25");
        assertThat(answer.text("/status")).as(answer.body()).isEqualTo("USE_UP");
        assertThat(answer.at("/mayFill").asBoolean()).isFalse();
        assertThat(answer.at("/mayCarry").asBoolean()).isTrue();
        assertThat(answer.at("/mayUse").asBoolean()).isTrue();
        var shell = answer.at("/requirements/0");
        assertThat(answer.at("/requirements").size()).isEqualTo(1);
        assertThat(shell.at("/requirement").asString()).isEqualTo("SHELL");
        assertThat(shell.at("/outcome").asString()).isEqualTo("DUE");
        assertThat(shell.at("/due").asString()).isEqualTo("2021-05");
        assertThat(shell.at("/lastDay").asString()).isEqualTo("2021-05-31");
        assertThat(shell.at("/overdue").asBoolean()).isTrue();
        assertThat(shell.at("/rule").asString()).isEqualTo("us.180.209.g.lpg");
        assertThat(shell.at("/citation/instrument").asString()).isEqualTo("49 CFR");
        assertThat(shell.at("/citation/section").asString()).isEqualTo("180.209(g)");
        assertThat(shell.at("/citation/basis").asString()).isEqualTo("TEXT");
        assertThat(shell.at("/citation/edition").asString()).contains("2026-08-10");
        for (var field : List.of("inForceFrom", "url", "retrieved", "lastConfirmed")) {
            assertThat(shell.at("/citation/" + field).asString()).as(field).isNotBlank();
        }
        assertThat(texts(answer, "/requirements/0/facts")).contains("service.lading", "requalifications");
        assertThat(answer.text("/ruleBook/hash")).matches("sha256:[0-9a-f]{64}");
        assertThat(texts(answer, "/permissions/mayFill/reasons")).containsExactlyInAnyOrder("RIN_NOT_RECORDED",
                "OVERDUE",
                "MISSING_MARKS_LEGIBLE", "MISSING_OWNER_CONSENT", "MISSING_CONDITION", "MISSING_HOLDS");
        assertThat(answer.at("/permissions/mayCarry/allowed").asBoolean()).isTrue();
        assertThat(answer.body()).contains("CURRENT_TEXT_NOT_READ");
    }

    @Test
    void withoutADayItIsToday() {
        assertThat(assess("{}").expect(200).text("/asOf")).isEqualTo("2026-11-25");
    }

    @Test
    void nothingKnownIsNothingAllowed() {
        var answer = assess("{}").expect(200);
        assertThat(answer.text("/status")).isEqualTo("UNDETERMINED");
        for (var permission : List.of("mayFill", "mayCarry", "mayCarryEmpty", "mayUse")) {
            assertThat(answer.at("/" + permission).asBoolean()).isFalse();
            assertThat(texts(answer, "/permissions/" + permission + "/reasons")).isNotEmpty();
        }
        assertThat(answer.at("/requirements/0/due").isMissingNode()).isTrue();
        assertThat(answer.at("/requirements/0/overdue").isMissingNode()).isTrue();
    }

    @Test
    void everythingKnownAndInOrderMayBeFilled() {
        var answer = assess("""
                {"asOf":"2026-11-25","jurisdiction":"US","container":{"kind":"CYLINDER","specification":"DOT-4BA240",
                 "manufactured":"2014-11","waterCapacity":"47.6 lb","coated":true,"marksLegible":true,"ownerConsent":true,
                 "service":{"lading":"LPG","exclusive":true,"corrosionFree":true}},
                 "condition":{"damage":[]},"holds":[],"requalifications":[]}""").expect(200);
        assertThat(answer.text("/status")).isEqualTo("DUE_THIS_MONTH");
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isTrue();
        assertThat(answer.at("/permissions/mayFill/reasons").size()).isZero();
    }

    @Test
    void absentHistoryIsNotAnEmptyOne() {
        var template = """
                {"asOf":"2026-11-25","jurisdiction":"US","container":{"kind":"CYLINDER","specification":"DOT-3B300",
                 "manufactured":"2024-11"}%s}""";
        assertThat(assess(template.formatted("")).text("/status")).isEqualTo("UNDETERMINED");
        assertThat(assess(template.formatted(",\"requalifications\":null")).text("/status")).isEqualTo("UNDETERMINED");
        assertThat(texts(assess(template.formatted(",\"requalifications\":[]")), "/requirements/0/missing"))
                .contains("MISSING_LADING").doesNotContain("MISSING_REQUALIFICATIONS");
    }

    /** Every kind of bad input names its field, what was found and what is accepted; all at once. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\u0001', value = {
            "{\"container\":{\"specification\":\"DOT-9ZZ\"}}|/container/specification|UNKNOWN_SPECIFICATION",
            "{\"container\":{\"manufactured\":\"2004-13\"}}|/container/manufactured|INVALID_MONTH",
            "{\"container\":{\"manufactured\":\"2027-01\"}}|/container/manufactured|IN_THE_FUTURE",
            "{\"container\":{\"waterCapacity\":\"-47.6 lb\"}}|/container/waterCapacity|INVALID_CAPACITY",
            "{\"container\":{\"waterCapacity\":\"47.6\"}}|/container/waterCapacity|INVALID_CAPACITY",
            "{\"container\":{\"waterCapacity\":\"0 lb\"}}|/container/waterCapacity|INVALID_CAPACITY",
            "{\"container\":{\"servicePressure\":-1}}|/container/servicePressure|OUT_OF_RANGE",
            "{\"container\":{\"kind\":\"BARREL\"}}|/container/kind|UNKNOWN_WORD",
            "{\"container\":{\"service\":{\"lading\":\"lp gas\"}}}|/container/service/lading|INVALID_LADING",
            "{\"container\":{\"permit\":{\"intervalYears\":5.5}}}|/container/permit/intervalYears|OUT_OF_RANGE",
            "{\"requalifications\":[{\"month\":\"2016-00\",\"method\":\"EXTERNAL_VISUAL\"}]}|/requalifications/0/month|INVALID_MONTH",
            "{\"requalifications\":[{\"month\":\"2016-05\",\"method\":\"PEEK\"}]}|/requalifications/0/method|UNKNOWN_WORD",
            "{\"requalifications\":[{\"month\":\"2016-05\",\"rin\":\"A12\"}]}|/requalifications/0/rin|INVALID_RIN",
            "{\"container\":{\"manufactured\":\"1912-01\"},\"requalifications\":[{\"mark\":\"5-16\"}]}|/requalifications/0/mark|AMBIGUOUS_MARK",
            "{\"requalifications\":[{\"mark\":\"13-2016\"}]}|/requalifications/0/mark|UNREADABLE_MARK",
            "{\"requalifications\":[{\"mark\":\"5-2016E\",\"month\":\"2016-06\"}]}|/requalifications/0/mark|TOLD_TWICE",
            "{\"requalifications\":[{}]}|/requalifications/0/month|MISSING",
            "{\"requalifications\":[null]}|/requalifications/0|MISSING",
            "{\"container\":{\"manufactured\":\"2010-05\"},\"requalifications\":[{\"month\":\"2010-04\",\"method\":\"V\"}]}|/requalifications/0/month|BEFORE_MANUFACTURE",
            "{\"asOf\":\"yesterday\"}|/asOf|INVALID_DATE",
            "{\"asOf\":\"2026-02-30\"}|/asOf|INVALID_DATE",
            "{\"filledOn\":\"2021\"}|/filledOn|INVALID_DATE",
            "{\"policies\":[\"BE_NICE\"]}|/policies/0|UNKNOWN_WORD",
            "{\"enable\":[\"SECONDRY\"]}|/enable/0|UNKNOWN_RULE",
            "{\"jurisdiction\":\"usa!\"}|/jurisdiction|INVALID_JURISDICTION",
            "{\"condition\":{\"tareLossPercent\":101}}|/condition/tareLossPercent|OUT_OF_RANGE",
            "{\"condition\":{\"damage\":[null]}}|/condition/damage/0|MISSING",
            "{\"holds\":[{\"placedOn\":\"2026-01-01\"}]}|/holds/0/reason|MISSING",
            "{\"container\":{\"coatd\":true}}|/container/coatd|UNKNOWN_FIELD",
            "{\"container\":{\"coated\":\"maybe\"}}|/container/coated|WRONG_TYPE"})
    void badInputNamesItsField(String body, String pointer, String code) {
        var answer = assess(body).expectProblem(400, "INVALID_INPUT");
        assertThat(answer.errors()).as(answer.body()).isEqualTo(Map.of(pointer, code));
        assertThat(answer.text("/errors/0/accepted")).isNotBlank();
    }

    @Test
    void allThatIsWrongIsToldAtOnce() {
        var answer = assess("""
                {"asOf":"x","container":{"kind":"y","waterCapacity":"z"},"policies":["w"]}""");
        assertThat(answer.expectProblem(400, "INVALID_INPUT").errors()).hasSize(4);
    }

    @Test
    void whatIsNoJsonIsSaidToBeNone() {
        assess("{\"asOf\":").expectProblem(400, "INVALID_INPUT");
        assess("[]").expectProblem(400, "INVALID_INPUT");
        api.anonymous().post("/api/assessments", "{}").expect(401);
    }

    /** 49 CFR 180.415: one mark of a tank, such as "10-99 P, V, L", tells of several tests. */
    @Test
    void oneMarkOfATankStandsForEachOfItsTests() {
        var tank = "{\"asOf\":\"2026-11-25\",\"jurisdiction\":\"US\",\"container\":{\"kind\":\"CARGO_TANK\","
                + "\"specification\":\"MC-331\",\"manufactured\":\"2010-03\"},\"requalifications\":[%s]}";
        var marked = assess(tank.formatted("{\"mark\":\"3-26 P, V\"}")).expect(200);
        var told = assess(tank.formatted("{\"month\":\"2026-03\",\"method\":\"P\"},"
                + "{\"month\":\"2026-03\",\"method\":\"V\"}")).expect(200);
        assertThat(marked.json()).isEqualTo(told.json());
        assertThat(marked.at("/requirements").toString()).contains("2027-03");
        assertThat(assess(tank.formatted("{\"mark\":\"3-26 P, V\",\"method\":\"P\"}"))
                .expectProblem(400, "INVALID_INPUT").errors()).containsValue("TOLD_TWICE");
    }

    /** The United States let a foreign cylinder be filled for export alone, 49 CFR 180.209(l): nothing is permitted here. */
    @ParameterizedTest
    @ValueSource(strings = {"EN 1442", "ADR-PI", "ADR-DRUM", "EN 13110 P15Y", "TC-SU5931"})
    void aSpecificationOfAnotherSystemIsNeverFineHere(String specification) {
        var answer = assess("{\"jurisdiction\":\"US\",\"container\":{\"kind\":\"CYLINDER\",\"specification\":\""
                + specification + "\",\"manufactured\":\"2020-03\",\"waterCapacity\":\"26 L\",\"coated\":true,"
                + "\"service\":{\"lading\":\"LPG\",\"exclusive\":true,\"corrosionFree\":true}},"
                + "\"requalifications\":[]}").expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).isFalse();
        assertThat(answer.at("/mayCarry").asBoolean() || answer.at("/mayUse").asBoolean()).isFalse();
        assertThat(answer.text("/status")).isIn("OVERDUE", "UNDETERMINED", "OTHER_AUTHORITY");
    }
}
