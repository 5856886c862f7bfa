package org.collarbook.compliance.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

/** What became of each rule, on request; and the facts that only some rules read. */
@RegisterTest
class ExplainedTests {

    private final Api api;
    private final Given given;

    ExplainedTests(Api api, Given given) {
        this.api = api;
        this.given = given;
    }

    private Answer assess(String query, String body) {
        return api.as(Role.FILLER).post("/api/assessments" + query, body);
    }

    private static Map<String, JsonNode> explanation(Answer answer) {
        var rules = new HashMap<String, JsonNode>();
        answer.at("/explanation").forEach(rule -> rules.put(rule.at("/ruleId").asString(), rule));
        return rules;
    }

    private static Map<String, String> conditions(JsonNode rule) {
        var conditions = new HashMap<String, String>();
        rule.at("/conditions").forEach(one -> conditions.put(one.at("/condition").asString(), one.at("/fact")
                .asString() + " " + one.at("/holds").asString()));
        return conditions;
    }

    /** 49 CFR 180.209(g): five years from an external visual inspection, for LP-gas of 180.209(e)'s quality. */
    @Test
    void tellsWhatBecameOfEveryRule() {
        var answer = assess("?explain=true", """
                {"asOf":"2026-11-25","jurisdiction":"US","container":{"kind":"CYLINDER","specification":"DOT-4BA240",
                  "manufactured":"2004-05","waterCapacity":"47.6 lb","coated":true,
                  "service":{"lading":"LPG","exclusive":true,"corrosionFree":true}},
                 "requalifications":[{"mark":"5-16E"}]}""").expect(200);
        var rules = explanation(answer);
        var governs = rules.get("us.180.209.g.lpg");
        assertThat(governs.at("/verdict").asString()).isEqualTo("GOVERNS");
        assertThat(governs.at("/topic").asString()).isEqualTo("SHELL");
        assertThat(governs.at("/jurisdiction").asString()).isEqualTo("US");
        assertThat(governs.at("/title").asString()).isNotBlank();
        assertThat(governs.at("/value").asString()).contains("EXTERNAL_VISUAL 5 years");
        assertThat(governs.at("/citation/section").asString()).isEqualTo("180.209(g)");
        assertThat(conditions(governs)).containsEntry("kind: [CYLINDER]", "kind YES")
                .containsEntry("exclusive: true", "service.exclusive YES");
        var small = rules.get("us.180.209.d");
        assertThat(small.at("/verdict").asString()).isEqualTo("DOES_NOT_APPLY");
        assertThat(conditions(small)).containsEntry("waterCapacityAtMost: 12 lb", "waterCapacity NO");
        assertThat(rules.get("us.180.209.b").at("/verdict").asString()).isEqualTo("OF_OTHER_CONTAINERS");
        assertThat(answer.at("/requirements/0/rule").asString()).isEqualTo("us.180.209.g.lpg");
    }

    @Test
    void isAbsentUnlessAskedFor() {
        assertThat(assess("", "{}").expect(200).at("/explanation").isMissingNode()).isTrue();
        assertThat(assess("?explain=false", "{}").expect(200).at("/explanation").isMissingNode()).isTrue();
        assertThat(assess("?explain=true", "{}").expect(200).at("/explanation").isArray()).isTrue();
        var refused = assess("?explain=please", "{}").expectProblem(400, "INVALID_INPUT");
        assertThat(refused.errors()).isEqualTo(Map.of("explain", "WRONG_TYPE"));
        assertThat(refused.text("/errors/0/accepted")).isEqualTo("true or false");
    }

    @Test
    void explainsAContainerOfTheRegister() {
        var id = given.registered();
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        var path = "/api/containers/" + id + "/assessment";
        var answer = api.as(Role.CLERK).get(path + "?explain=true").expect(200);
        var rule = answer.text("/requirements/0/rule");
        assertThat(explanation(answer).get(rule).at("/verdict").asString()).isEqualTo("GOVERNS");
        assertThat(api.as(Role.CLERK).get(path).expect(200).at("/explanation").isMissingNode()).isTrue();
        assertThat(api.as(Role.CLERK).get(path + "?explain=x").expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("explain", "WRONG_TYPE"));
    }

    /** 49 CFR 173.315(j): a stationary tank travels at most 5 percent full, but for stated exceptions. */
    @Test
    void aMoveIsJudgedByHowFullAndWhatFor() {
        var tank = """
                {"asOf":"2026-11-25","jurisdiction":"US","container":{"kind":"STATIONARY_TANK","specification":"ASME",
                  "manufactured":"2010-05","waterCapacity":"500 gal","service":{"lading":"LPG"}%s},
                 "requalifications":[],"holds":[],"condition":{"damage":[]}%s}""";
        var unknown = assess("?explain=true", tank.formatted("", "")).expect(200);
        assertThat(unknown.at("/mayCarry").asBoolean()).isFalse();
        assertThat(unknown.body()).contains("MISSING_PERCENT_FULL");
        var told = assess("?explain=true", tank.formatted("",
                ",\"move\":{\"percentFull\":4.5,\"purpose\":\"DELIVERY\"}")).expect(200);
        assertThat(told.body()).doesNotContain("MISSING_PERCENT_FULL").doesNotContain("MISSING_PURPOSE")
                .contains("percentFullAtMost: 5");
        assertThat(told.at("/mayCarry").asBoolean()).as(told.body()).isTrue();
    }

    @Test
    void takesTheFactsOfTanksAndExtinguishers() {
        assess("", """
                {"container":{"reliefValve":"EXTERNAL","extendedPeriod":"P15Y","extinguisher":"CARBON_DIOXIDE",
                  "schemeDue":"2031-04"},"outOfServiceSince":"2025-01-31","move":{"percentFull":0}}""").expect(200);
        assess("", """
                {"container":{"reliefValve":null,"extendedPeriod":null,"extinguisher":null,"schemeDue":null},
                 "outOfServiceSince":null,"move":{"percentFull":100,"purpose":null}}""").expect(200);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\u0001', value = {
            "{\"container\":{\"reliefValve\":\"SIDEWAYS\"}}|/container/reliefValve|UNKNOWN_WORD|INTERNAL, EXTERNAL",
            "{\"container\":{\"extendedPeriod\":\"P16Y\"}}|/container/extendedPeriod|UNKNOWN_WORD|P15Y",
            "{\"container\":{\"extinguisher\":\"BUCKET\"}}|/container/extinguisher|UNKNOWN_WORD|HALON_1211",
            "{\"container\":{\"schemeDue\":\"2031-4\"}}|/container/schemeDue|INVALID_MONTH|a month such as",
            "{\"outOfServiceSince\":\"2025-02-29\"}|/outOfServiceSince|INVALID_DATE|a date such as",
            "{\"container\":{\"manufactured\":\"2010-05\"},\"outOfServiceSince\":\"2010-04-30\"}|/outOfServiceSince|BEFORE_MANUFACTURE|2010-05",
            "{\"move\":{\"percentFull\":100.5}}|/move/percentFull|OUT_OF_RANGE|from 0 to 100",
            "{\"move\":{\"percentFull\":-1}}|/move/percentFull|OUT_OF_RANGE|from 0 to 100",
            "{\"move\":{\"percentFull\":\"half\"}}|/move/percentFull|WRONG_TYPE|number",
            "{\"move\":{\"purpose\":\"JOYRIDE\"}}|/move/purpose|UNKNOWN_WORD|TO_REQUALIFIER",
            "{\"move\":{\"percent\":5}}|/move/percent|UNKNOWN_FIELD|percentFull"})
    void badFactsAreNamedWithWhatIsAccepted(String body, String pointer, String code, String accepted) {
        var answer = assess("", body).expectProblem(400, "INVALID_INPUT");
        assertThat(answer.errors()).as(answer.body()).isEqualTo(Map.of(pointer, code));
        assertThat(answer.text("/errors/0/accepted")).contains(accepted);
    }
}
