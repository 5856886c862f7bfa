package org.collarbook.regulation.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.FillingLimit;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.SiteAssessment;
import org.collarbook.regulation.SiteFacts;
import org.collarbook.regulation.engine.Part;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every rule that ships decides its matching example as it says, and leaves the other one alone. */
class RuleExamplesTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final List<RuleExample> EXAMPLES = RuleBookLoader.examples(RuleBookLoader.shipped("regulations/"));
    private static final Map<String, RuleInfo> RULES = BOOK.rules().stream().collect(Collectors.toMap(RuleInfo::id,
            rule -> rule));
    private static final Map<String, String> GIVES = EXAMPLES.stream().filter(RuleExample::matching).collect(Collectors
            .toMap(RuleExample::ruleId, RuleExample::gives));

    static Stream<RuleExample> examples() {
        return EXAMPLES.stream();
    }

    @Test
    void everyRuleHasBoth() {
        Map<String, Long> count = EXAMPLES.stream().collect(Collectors.groupingBy(RuleExample::ruleId, Collectors
                .counting()));
        assertThat(count).hasSize(BOOK.rules().size()).allSatisfy((_, number) -> assertThat(number).isEqualTo(2));
    }

    @ParameterizedTest
    @MethodSource("examples")
    void holds(RuleExample example) {
        String topic = RULES.get(example.ruleId()).topic();
        if (topic.equals("FILLING_DENSITY")) {
            limit(example);
        } else if (Arrays.stream(Requirement.values()).anyMatch(one -> one.name().equals(topic))) {
            clock(example);
        } else if (Arrays.stream(Part.Topic.values()).anyMatch(one -> one.name().equals(topic))) {
            gate(example);
        } else if (topic.equals("SITE_EXTINGUISHER")) {
            site(example);
        } else {
            told(example);
        }
    }

    /** What a rule gives back, notes or cites is told with its own citation; a move is allowed or not. */
    private static void told(RuleExample example) {
        Assessment assessment = BOOK.assess(example.facts(), example.asOf());
        String gives = GIVES.get(example.ruleId());
        if (gives.equals("CARRY")) {
            assertThat(assessment.mayCarry().allowed()).as("%s", assessment).isEqualTo(example.matching());
            return;
        }
        List<Citation> own = RULES.get(example.ruleId()).values().stream().map(RuleInfo.DatedValue::citation).toList();
        assertThat(assessment.reasons().stream().anyMatch(reason -> reason.code() == ReasonCode.valueOf(gives)
                && own.contains(reason.citation()))).as("%s", assessment).isEqualTo(example.matching());
    }

    private static void clock(RuleExample example) {
        Assessment assessment = BOOK.assess(example.facts(), example.asOf());
        List<String> given = assessment.requirements().stream().filter(clock -> example.ruleId().equals(clock.ruleId()))
                .map(
                        RuleExamplesTest::told)
                .toList();
        if (example.matching()) {
            assertThat(given).as("%s", assessment).containsExactly(example.gives());
        } else {
            assertThat(given).as("%s", assessment).isEmpty();
        }
    }

    private static String told(Clock clock) {
        return clock.outcome() instanceof Outcome.Due due ? due.month().toString() : clock.outcome().code();
    }

    private static void gate(RuleExample example) {
        Assessment assessment = BOOK.assess(example.facts(), example.asOf());
        ReasonCode code = ReasonCode.valueOf(GIVES.get(example.ruleId()));
        assertThat(assessment.mayFill().refusedFor(code)).as("%s", assessment).isEqualTo(example.matching());
    }

    /** The example's tank stands alone at its site, with nothing beside it. */
    private static void site(RuleExample example) {
        Facts tank = example.facts();
        SiteAssessment assessment = BOOK.assessSite(new SiteFacts(tank.jurisdiction(), List.of(tank), List.of(),
                tank.enable()), example.asOf());
        assertThat(example.ruleId().equals(assessment.ruleId())).as("%s", assessment).isEqualTo(example.matching());
        if (example.matching()) {
            assertThat(assessment.outcome().name()).as("%s", assessment).isEqualTo(example.gives());
        }
    }

    private static void limit(RuleExample example) {
        FillingLimit limit = BOOK.fillingLimit(example.facts(), new BigDecimal("0.504"), example.asOf());
        if (example.matching()) {
            assertThat(limit).isInstanceOfSatisfying(FillingLimit.Limit.class, found -> {
                assertThat(found.ruleId()).isEqualTo(example.ruleId());
                assertThat(found.percent()).isEqualByComparingTo(example.gives());
            });
        } else {
            assertThat(limit).isInstanceOf(FillingLimit.Unknown.class);
        }
    }
}
