package org.collarbook.compliance.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@RegisterTest
class RulesTests {

    private final Api api;
    private final Given given;
    private final TestClock clock;
    private final RuleBook book;

    RulesTests(Api api, Given given, TestClock clock, RuleBook book) {
        this.api = api;
        this.given = given;
        this.clock = clock;
        this.book = book;
    }

    private Answer get(String path) {
        return api.as(Role.FILLER).get("/api/rules" + path);
    }

    private static List<String> texts(Answer answer, String list, String field) {
        var texts = new ArrayList<String>();
        answer.at(list).forEach(item -> texts.add(item.at(field).asString()));
        return texts;
    }

    @Test
    void listsEveryRuleWithWhatItSaysToday() {
        var all = get("").expect(200);
        assertThat(texts(all, "/items", "/id")).isSorted()
                .containsExactlyInAnyOrderElementsOf(book.rules().stream().map(RuleInfo::id).toList());
        assertThat(all.at("/count").asInt()).isEqualTo(book.rules().size());
        assertThat(all.text("/ruleBook/hash")).isEqualTo(book.hash());
        assertThat(all.text("/ruleBook/engineVersion")).isEqualTo(book.engineVersion());
        assertThat(all.text("/asOf")).isEqualTo("2026-11-25");
    }

    /** 49 CFR 180.209(g), annual edition of 2019: five years from a visual inspection. */
    @Test
    void aLineBearsTheValueInForceWithItsCitation() {
        var line = get("?q=us.180.209.g.lpg").expect(200).at("/items/0");
        assertThat(line.at("/jurisdiction").asString()).isEqualTo("US");
        assertThat(line.at("/topic").asString()).isEqualTo("SHELL");
        assertThat(line.at("/onByDefault").asBoolean()).isTrue();
        assertThat(line.at("/basis").asString()).isEqualTo("TEXT");
        assertThat(line.at("/inForce/value").asString()).contains("after EXTERNAL_VISUAL 5 years");
        assertThat(line.at("/inForce/citation/section").asString()).isEqualTo("180.209(g)");
        assertThat(line.at("/inForce/citation/instrument").asString()).isEqualTo("49 CFR");
    }

    @Test
    void filtersNarrowAndCombine() {
        var all = get("").expect(200).at("/count").asInt();
        var on = get("?on=true").expect(200);
        var off = get("?on=false").expect(200);
        assertThat(on.at("/count").asInt() + off.at("/count").asInt()).isEqualTo(all);
        assertThat(texts(on, "/items", "/basis")).isSubsetOf("TEXT", "QUOTED").isNotEmpty();
        assertThat(texts(off, "/items", "/onByDefault")).containsOnly("false");
        assertThat(texts(get("?basis=memory").expect(200), "/items", "/basis")).containsOnly("MEMORY");
        assertThat(texts(get("?topic=CONSENT").expect(200), "/items", "/topic")).containsOnly("CONSENT");
        assertThat(texts(get("?jurisdiction=US").expect(200), "/items", "/jurisdiction")).containsOnly("US");
        assertThat(texts(get("?jurisdiction=US-TX").expect(200), "/items", "/id"))
                .as("in a province its country's rules answer too")
                .containsAll(texts(get("?jurisdiction=US").expect(200), "/items", "/id"));
        assertThat(texts(get("?q=WITH%20A%20STAR&topic=SHELL").expect(200), "/items", "/title")).isNotEmpty()
                .allMatch(title -> title.toLowerCase(Locale.ROOT).contains("with a star"));
        assertThat(get("?q=no+such+words").expect(200).at("/items").isEmpty()).isTrue();
    }

    /** What no rule could match is refused, lest a typing error read as "there is no rule". */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"jurisdiction=us!|jurisdiction|UNKNOWN_WORD|US",
            "jurisdiction=ZZ|jurisdiction|UNKNOWN_WORD|US", "topic=SHALL|topic|UNKNOWN_WORD|SHELL",
            "basis=HEARSAY|basis|UNKNOWN_WORD|COMMON_PRACTICE", "on=maybe|on|WRONG_TYPE|true or false",
            "q=%00|q|INVALID_TEXT|NUL"})
    void wrongFiltersAreNamedWithWhatIsAccepted(String query, String parameter, String code, String accepted) {
        var answer = get("?" + query).expectProblem(400, "INVALID_INPUT");
        assertThat(answer.errors()).isEqualTo(Map.of(parameter, code));
        assertThat(answer.text("/errors/0/accepted")).contains(accepted);
    }

    @Test
    void allWrongFiltersAreToldAtOnce() {
        assertThat(get("?jurisdiction=ZZ&topic=x&basis=y&on=z").expectProblem(400, "INVALID_INPUT").errors())
                .containsOnlyKeys("jurisdiction", "topic", "basis", "on");
    }

    /**
     * 85 FR 68790 (HM-219B), in force 2020-11-30: 180.209(e) gives twelve years; the annual edition of 2019 gave ten.
     */
    @Test
    void oneRuleIsShownWhole() {
        var rule = get("/us.180.209.e").expect(200);
        assertThat(rule.text("/title")).isEqualTo("DOT 4B, 4BA, 4BW and 4E, coated, exclusively in non-corrosive"
                + " service");
        assertThat(rule.text("/note")).contains("LP-gas");
        assertThat(rule.at("/precedence").asInt()).isEqualTo(30);
        assertThat(rule.text("/selectedBy")).isEqualTo("EVALUATION");
        assertThat(rule.at("/onByDefault").asBoolean()).isTrue();
        assertThat(rule.at("/applies/family").toString()).isEqualTo("[\"4B\",\"4BA\",\"4BW\",\"4E\"]");
        assertThat(rule.text("/applies/coated")).isEqualTo("true");
        var values = rule.at("/values");
        assertThat(values.at("/1/from").asString()).isEqualTo("2017-01-23");
        assertThat(values.at("/1/until").asString()).isEqualTo("2020-11-30");
        assertThat(values.at("/1/value").asString()).contains("first 10 years");
        assertThat(values.at("/1/citation/basis").asString()).isEqualTo("TEXT");
        assertThat(values.at("/0/onByDefault").asBoolean()).as("told at second hand").isFalse();
        assertThat(values.at("/2/policy").asString()).isEqualTo("DISCRETION_2017");
        assertThat(values.at("/2/onByDefault").asBoolean()).isFalse();
        assertThat(rule.at("/examples").size()).isEqualTo(2);
        assertThat(rule.at("/examples/0/matching").asBoolean()).isTrue();
        assertThat(rule.text("/examples/0/facts/specification")).isNotBlank();
        assertThat(rule.text("/examples/0/gives")).isNotBlank();
        assertThat(rule.at("/examples/1/gives").isMissingNode()).isTrue();
        assertThat(rule.text("/ruleBook/hash")).isEqualTo(book.hash());
    }

    @Test
    void everyRuleCanBeShown() {
        for (var rule : book.rules()) {
            var shown = get("/" + rule.id()).expect(200);
            assertThat(shown.at("/values").size()).as(rule.id()).isEqualTo(rule.values().size());
            assertThat(shown.text("/values/0/citation/section")).as(rule.id()).isNotBlank();
        }
        assertThat(get("/us.180.209.b").text("/values/0/unread")).contains("91 FR 49357");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/us.no.such.rule", "/US.180.209.E", "/COVERAGE"})
    void anUnknownRuleIsNotFound(String path) {
        get(path).expectProblem(404, "NOT_FOUND");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "/us.180.209.e", "/coverage"})
    void answersNotModifiedUntilTheBookOrTheDayChanges(String path) {
        var first = get(path).expect(200);
        assertThat(first.etag()).startsWith("\"" + book.hash()).doesNotStartWith("W/");
        var again = api.as(Role.FILLER).with("If-None-Match", first.etag()).get("/api/rules" + path).expect(304);
        assertThat(again.bytes()).isEmpty();
        assertThat(again.etag()).isEqualTo(first.etag());
        clock.set(TestClock.TODAY.plusDays(1));
        api.as(Role.FILLER).with("If-None-Match", first.etag()).get("/api/rules" + path).expect(200);
    }

    /** 85 FR 68790: the twelve years of 180.209(e) are in force from 2020-11-30. */
    @ParameterizedTest
    @CsvSource({"2020-11-29,2017-01-23", "2020-11-30,2020-11-30"})
    void whatIsInForceFollowsTheDay(LocalDate today, String from) {
        clock.set(today);
        assertThat(get("?q=us.180.209.e").expect(200).text("/items/0/inForce/from")).isEqualTo(from);
    }

    @Test
    void aPortalMayReadTheLawAndAStrangerMayNot() {
        var portal = api.asPortalOf(new CustomerId(given.customer()));
        portal.get("/api/rules").expect(200);
        portal.get("/api/rules/us.180.209.e").expect(200);
        portal.get("/api/rules/coverage").expect(200);
        api.anonymous().get("/api/rules").expect(401);
    }
}
