package org.collarbook.compliance.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;

import org.collarbook.access.Role;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

@RegisterTest
class CoverageTests {

    private final Answer coverage;
    private final RuleBook book;

    CoverageTests(Api api, RuleBook book) {
        this.coverage = api.as(Role.CLERK).get("/api/rules/coverage").expect(200);
        this.book = book;
    }

    private JsonNode one(String list, String field, String value) {
        for (var item : coverage.at(list)) {
            if (item.at(field).asString().equals(value)) {
                return item;
            }
        }
        throw new AssertionError("no " + value + " in " + coverage);
    }

    private static List<String> texts(JsonNode list) {
        var texts = new ArrayList<String>();
        list.forEach(text -> texts.add(text.asString()));
        return texts;
    }

    @Test
    void everyRuleStandsUnderTheSectionsItCites() {
        var held = new HashSet<String>();
        coverage.at("/held").forEach(section -> {
            var ids = texts(section.at("/ids"));
            assertThat(section.at("/rules").asInt()).isEqualTo(ids.size());
            assertThat(section.at("/section").asString()).isNotBlank().doesNotContain("(");
            held.addAll(ids);
        });
        assertThat(held).containsExactlyInAnyOrderElementsOf(book.rules().stream().map(RuleInfo::id).toList());
        assertThat(coverage.at("/rules").asInt()).isEqualTo(held.size());
        var paragraphs = one("/held", "/section", "180.209");
        assertThat(paragraphs.at("/jurisdiction").asString()).isEqualTo("US");
        assertThat(paragraphs.at("/instrument").asString()).isEqualTo("49 CFR");
        assertThat(texts(paragraphs.at("/ids"))).contains("us.180.209.e", "us.180.209.g.lpg");
        assertThat(one("/held", "/instrument", "PHMSA enforcement notice").at("/section").asString())
                .isEqualTo("on 180.209");
    }

    @Test
    void whatIsOffSaysWhyAndHowToAsk() {
        var memory = one("/off", "/code", "MEMORY");
        assertThat(texts(memory.at("/ids"))).isNotEmpty().containsExactlyElementsOf(book.rules().stream()
                .filter(rule -> rule.values().stream().anyMatch(value -> value.policy() == null
                        && value.inForceOn(TestClock.TODAY) && value.citation().basis() == Basis.MEMORY))
                .map(RuleInfo::id).sorted().toList());
        assertThat(memory.at("/why").asString()).contains("memory");
        assertThat(memory.at("/ask").asString()).contains("enable");
        var policy = one("/off", "/code", "DISCRETION_2017");
        assertThat(texts(policy.at("/ids"))).contains("us.180.209.e");
        assertThat(policy.at("/ask").asString()).contains("policies").contains("DISCRETION_2017");
        assertThat(coverage.at("/off")).noneMatch(off -> off.at("/code").asString().equals("TEXT"));
    }

    @Test
    void laterAmendmentsThatWereNotReadAreNamed() {
        var unread = one("/unread", "/id", "us.180.209.b");
        assertThat(unread.at("/amendment").asString()).contains("91 FR 49357");
        assertThat(unread.at("/section").asString()).isEqualTo("180.209(b)(1); 180.213(f)(2)");
        assertThat(unread.at("/edition").asString()).contains("2019-10-01");
    }

    @Test
    void whatIsKnowinglyNotHeldIsNamed() {
        assertThat(coverage.at("/notHeld").size()).isEqualTo(book.notHeld().size());
        var file = "us/49cfr-180.209.yaml";
        var more = RuleBookLoader.of(Map.of(file, RuleBookLoader.shipped("regulations/").get(file)
                .replaceFirst("(?m)^notHeld:(\\n  .*)*", "") + """

                notHeld:
                  - {section: 180.209(k), what: The foreign cylinders, why: The paragraph was not read.}
                """));
        assertThat(Coverage.of(more, TestClock.TODAY).notHeld()).containsExactly(new Coverage.SectionNotHeld("US",
                "180.209(k)", "The foreign cylinders", "The paragraph was not read."));
    }

    @Test
    void aValueThatLiesAheadIsHeldAndNotInForce() {
        var file = "us/49cfr-180.201.yaml";
        var text = RuleBookLoader.shipped("regulations/").get(file);
        var ahead = RuleBookLoader.of(Map.of(file, text.replaceAll("(from|inForceFrom): \\d{4}-", "$1: 2099-")));
        var told = Coverage.of(ahead, TestClock.TODAY);
        assertThat(told.off()).singleElement().satisfies(off -> {
            assertThat(off.code()).isEqualTo("NOT_IN_FORCE");
            assertThat(off.rules()).isEqualTo(told.rules());
        });
        assertThat(told.unread()).isEmpty();
    }
}
