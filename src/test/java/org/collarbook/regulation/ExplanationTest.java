package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.collarbook.regulation.Considered.Answer;
import org.collarbook.regulation.Considered.Verdict;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;

/** What an explanation says agrees with what was decided, tried on many containers from a seed that a failure prints. */
class ExplanationTest {

    private static final long SEED = 20261126L;
    private static final int TRIES = 2_500;
    private static final RuleBook BOOK = RuleBookLoader.standard();

    /** A rule behind a clock: it governs, or the clock is open because of just this rule. */
    private static final Set<Verdict> BEHIND_A_CLOCK = EnumSet.of(Verdict.GOVERNS, Verdict.CANNOT_TELL,
            Verdict.SWITCHED_OFF);

    @Test
    void agreesWithTheAssessment() {
        EnumSet<Verdict> met = EnumSet.noneOf(Verdict.class);
        for (boolean tidy : new boolean[]{true, false}) {
            RandomFacts source = new RandomFacts(new Random(SEED), tidy);
            for (int i = 0; i < TRIES; i++) {
                Facts facts = unknownAtTimes(source.next(), i);
                // at times on a day before the first values held
                LocalDate day = i % 20 == 3 ? source.day().minusYears(40) : source.day();
                Assessment assessment = BOOK.assess(facts, day);
                List<Considered> explanation = BOOK.explain(facts, day);
                String about = "seed %d, on %s: %s".formatted(SEED, day, facts);
                everyClockHasItsRule(assessment, explanation, about);
                everyVerdictHasItsConditions(assessment, explanation, about);
                explanation.forEach(one -> met.add(one.verdict()));
            }
        }
        assertThat(met).containsExactlyInAnyOrder(Verdict.values());
    }

    private static Facts unknownAtTimes(Facts facts, int i) {
        return switch (i % 20) {
            case 0 -> facts.toBuilder().kind(null).build();
            case 1 -> facts.toBuilder().specification(null).build();
            case 2 -> facts.toBuilder().manufactured(null).build();
            default -> facts;
        };
    }

    private static void everyClockHasItsRule(Assessment assessment, List<Considered> explanation, String about) {
        Map<String, Considered> byId = explanation.stream().collect(Collectors.toMap(Considered::ruleId, Function
                .identity()));
        for (Clock clock : assessment.requirements()) {
            if (clock.ruleId() != null) {
                Considered behind = byId.get(clock.ruleId());
                assertThat(behind).as(about).isNotNull();
                assertThat(behind.verdict()).as("%s %s", clock, about).isIn(BEHIND_A_CLOCK);
                assertThat(behind.verdict()).as("%s %s", clock, about).isEqualTo(expected(clock, behind));
                assertThat(behind.citation()).as(about).isEqualTo(clock.citation());
                assertThat(behind.topic()).as(about).isEqualTo(clock.requirement().name());
            }
        }
        for (Considered one : explanation) {
            if (one.verdict() == Verdict.GOVERNS && isRequirement(one.topic())) {
                assertThat(assessment.requirements()).as("%s governs, %s", one, about)
                        .filteredOn(clock -> one.ruleId().equals(clock.ruleId())).hasSize(1);
            }
        }
    }

    /** Only a clock that cannot be told may stand on a rule that may not apply, or that is off. */
    private static Verdict expected(Clock clock, Considered behind) {
        if (!(clock.outcome() instanceof Outcome.Undetermined(List<Reason> reasons))) {
            return Verdict.GOVERNS;
        }
        if (behind.conditions().stream().anyMatch(condition -> condition.holds() == Answer.UNKNOWN)) {
            return Verdict.CANNOT_TELL;
        }
        return reasons.stream().anyMatch(reason -> reason.code() == ReasonCode.RULE_OFF)
                ? Verdict.SWITCHED_OFF
                : Verdict.GOVERNS;
    }

    private static boolean isRequirement(String topic) {
        return EnumSet.allOf(Requirement.class).stream().anyMatch(requirement -> requirement.name().equals(topic));
    }

    private static void everyVerdictHasItsConditions(Assessment assessment, List<Considered> explanation,
            String about) {
        for (Considered one : explanation) {
            List<Answer> answers = one.conditions().stream()
                    .filter(condition -> !condition.condition().startsWith("requires ")).map(
                            Considered.Condition::holds)
                    .toList();
            switch (one.verdict()) {
                case GOVERNS, OUTRANKED, SWITCHED_OFF, NOT_ASKED -> assertThat(answers).as("%s %s", one, about)
                        .containsOnly(Answer.YES);
                case DOES_NOT_APPLY, OF_OTHER_CONTAINERS -> assertThat(answers).as("%s %s", one, about)
                        .contains(Answer.NO);
                case CANNOT_TELL -> assertThat(answers.contains(Answer.UNKNOWN) || standsOpen(assessment))
                        .as("%s %s", one, about).isTrue();
                case OF_OTHER_METHODS, NOT_IN_FORCE -> assertThat(answers).as(about).isNotEmpty();
            }
        }
    }

    private static boolean standsOpen(Assessment assessment) {
        return assessment.gives(ReasonCode.CONTRADICTORY_FACTS) || assessment.gives(ReasonCode.MISSING_SPECIFICATION);
    }

    @Test
    void tellsOneContainerThroughout() {
        // 49 CFR 180.209(g): five years from an external visual inspection
        Facts facts = Cases.cylinder().requalifications(List.of(Cases.mark(YearMonth.of(2016, 5),
                Method.EXTERNAL_VISUAL))).build();
        Map<String, Considered> told = BOOK.explain(facts, Cases.TODAY).stream().collect(Collectors.toMap(
                Considered::ruleId, Function.identity()));
        assertThat(told.get("us.180.209.g.lpg").verdict()).isEqualTo(Verdict.GOVERNS);
        assertThat(told.get("us.180.209.b").verdict()).isEqualTo(Verdict.OF_OTHER_CONTAINERS);
        assertThat(told.get("us.180.209.b").conditions()).contains(new Considered.Condition("family: [3A, 3AA]",
                "specification", Answer.NO));
        assertThat(told.get("us.180.209.d").verdict()).isEqualTo(Verdict.DOES_NOT_APPLY);
        assertThat(told.get("us.180.209.d").conditions()).contains(new Considered.Condition(
                "waterCapacityAtMost: 12 lb", "waterCapacity", Answer.NO));
        assertThat(told.get("us.180.209.e").verdict()).isEqualTo(Verdict.OF_OTHER_METHODS);
    }

    @Test
    void anUnknownSpecificationIsNotAnotherContainer() {
        Facts facts = Cases.cylinder().specification(null).build();
        assertThat(BOOK.explain(facts, Cases.TODAY)).filteredOn(one -> one.ruleId().equals("us.180.209.g.lpg"))
                .singleElement().satisfies(one -> assertThat(one.verdict()).isIn(Verdict.CANNOT_TELL,
                        Verdict.OF_OTHER_METHODS));
    }
}
