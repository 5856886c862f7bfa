package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.Cases.TODAY;
import static org.collarbook.regulation.Cases.cylinder;
import static org.collarbook.regulation.Cases.mark;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sentences of 49 CFR 180.205(c) and 180.209 that the golden rows do not reach. */
class DecisionTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();

    private static Assessment assess(FactsBuilder facts) {
        return BOOK.assess(facts.build(), TODAY);
    }

    private static Outcome shell(Assessment assessment) {
        Clock clock = assessment.clock(Requirement.SHELL);
        assertThat(clock).isNotNull();
        return clock.outcome();
    }

    private static List<ReasonCode> missing(Assessment assessment) {
        assertThat(shell(assessment)).isInstanceOf(Outcome.Undetermined.class);
        return ((Outcome.Undetermined) shell(assessment)).reasons().stream().map(Reason::code).toList();
    }

    private static FactsBuilder visual(String month) {
        return cylinder().requalifications(List.of(mark(month, Method.EXTERNAL_VISUAL)));
    }

    /** 180.205(c) "during or before the month"; 173.301(a)(6) bars filling one that is overdue. */
    @ParameterizedTest
    @CsvSource({"2016-04-30,IN_DATE,true", "2016-05-01,DUE_THIS_MONTH,true", "2016-05-31,DUE_THIS_MONTH,true",
            "2016-06-01,OVERDUE,false"})
    void theDueMonthIsUsableToItsLastDay(LocalDate day, Status status, boolean mayFill) {
        Facts facts = cylinder().enable(Set.of("SECONDARY")).build();
        Assessment assessment = BOOK.assess(facts, day);
        assertThat(assessment.status()).isEqualTo(status);
        assertThat(assessment.mayFill().allowed()).isEqualTo(mayFill);
    }

    /** A cylinder of February 2012: twelve years on, a February of 29 days. */
    @ParameterizedTest
    @CsvSource({"2024-02-29,DUE_THIS_MONTH", "2024-03-01,OVERDUE"})
    void leapDay(LocalDate day, Status status) {
        assertThat(BOOK.assess(cylinder().manufactured(YearMonth.of(2012, 2)).build(), day).status()).isEqualTo(status);
    }

    /** The last day of each period of (e) and the first of the next, on both sides of each amendment. */
    @ParameterizedTest
    @CsvSource({"2017-01-22,", "2017-01-23,2018-05", "2020-10-29,2018-05", "2020-10-30,2018-05", "2020-11-29,2018-05",
            "2020-11-30,2020-05"})
    void theRuleInForceOnTheDayGoverns(LocalDate day, YearMonth due) {
        Facts facts = cylinder().manufactured(YearMonth.of(2008, 5)).build();
        Outcome outcome = shell(BOOK.assess(facts, day));
        if (due == null) {
            assertThat(outcome).isInstanceOfSatisfying(Outcome.Undetermined.class,
                    undetermined -> assertThat(undetermined
                            .reasons()).extracting(Reason::code).containsExactly(ReasonCode.RULE_OFF));
        } else {
            assertThat(outcome).isEqualTo(new Outcome.Due(due));
        }
    }

    @Test
    void aRuleIsAlsoSwitchedOnByItsId() {
        Facts facts = cylinder().manufactured(YearMonth.of(2003, 8)).enable(Set.of("us.180.209.e")).build();
        assertThat(shell(BOOK.assess(facts, LocalDate.of(2015, 6, 1))))
                .isEqualTo(new Outcome.Due(YearMonth.of(2015, 8)));
    }

    @Test
    void filledBeforeItFellDueItMayBeUsedUp() {
        Assessment assessment = assess(visual("2016-05").filledOn(LocalDate.of(2021, 5, 31)));
        assertThat(assessment.status()).isEqualTo(Status.USE_UP);
        assertThat(assessment.mayFill().refusedFor(ReasonCode.OVERDUE)).isTrue();
        assertThat(assessment.mayCarry().allowed() && assessment.mayUse().allowed()).isTrue();
    }

    @Test
    void filledTheDayAfterItMayNot() {
        Assessment assessment = assess(visual("2016-05").filledOn(LocalDate.of(2021, 6, 1)));
        assertThat(assessment.status()).isEqualTo(Status.OVERDUE);
        assertThat(assessment.mayUse().refusedFor(ReasonCode.FILLED_WHILE_OVERDUE)).isTrue();
        assertThat(assessment.mayCarry().allowed()).isFalse();
    }

    /** A fill on the day of the emptying may have come before it, so it does not stand. */
    @ParameterizedTest
    @CsvSource({"2021-05-19,USE_UP", "2021-05-20,OVERDUE", "2021-05-21,OVERDUE"})
    void emptiedSinceThereIsNothingToUseUp(LocalDate emptied, Status status) {
        Assessment assessment = assess(visual("2016-05").filledOn(LocalDate.of(2021, 5, 20)).emptiedOn(emptied));
        assertThat(assessment.status()).isEqualTo(status);
        assertThat(assessment.mayCarryEmpty().allowed()).isEqualTo(emptied.getDayOfMonth() == 21);
    }

    /** The due month as it stood on the day of the fill: the mark of 2024 was not yet there in 2022. */
    @Test
    void theFillIsJudgedByTheMarksThenBorne() {
        FactsBuilder facts = cylinder()
                .requalifications(List.of(mark("2016-05", Method.EXTERNAL_VISUAL), mark("2024-01",
                        Method.EXTERNAL_VISUAL)))
                .filledOn(LocalDate.of(2022, 3, 1));
        Assessment assessment = assess(facts);
        assertThat(assessment.status()).isEqualTo(Status.IN_DATE);
        assertThat(assessment.gives(ReasonCode.FILLED_WHILE_OVERDUE)).isTrue();
        assertThat(BOOK.assess(facts.build(), LocalDate.of(2030, 1, 1)).status()).isEqualTo(Status.OVERDUE);
    }

    /** In 2018 the text gave ten years, so one of 2008-05 filled in 2019 was overdue, though twelve came back. */
    @Test
    void theFillIsJudgedByTheRuleThenInForce() {
        FactsBuilder facts = cylinder().manufactured(YearMonth.of(2008, 5)).filledOn(LocalDate.of(2019, 3, 1));
        assertThat(assess(facts).mayUse().refusedFor(ReasonCode.FILLED_WHILE_OVERDUE)).isTrue();
        assertThat(assess(facts.policies(Set.of(Policy.DISCRETION_2017))).status()).isEqualTo(Status.USE_UP);
    }

    @Test
    void aFillUnderARuleThatWasNotReadIsNotJudged() {
        FactsBuilder facts = cylinder().filledOn(LocalDate.of(2015, 3, 1));
        assertThat(assess(facts).mayUse().refusedFor(ReasonCode.FILL_NOT_JUDGED)).isTrue();
        assertThat(assess(facts.enable(Set.of("SECONDARY"))).status()).isEqualTo(Status.USE_UP);
    }

    @Test
    void whatIsDatedAfterTheDayIsLeftOutAndTold() {
        FactsBuilder facts = visual("2016-05").filledOn(LocalDate.of(2027, 1, 1)).holds(List.of(new StandingHold("LEAK",
                LocalDate.of(2026, 12, 1))));
        Assessment assessment = assess(facts);
        assertThat(assessment.gives(ReasonCode.FACT_AFTER_AS_OF)).isTrue();
        assertThat(assessment.status()).isEqualTo(Status.OVERDUE);
        assertThat(assess(visual("2016-05")).gives(ReasonCode.FACT_AFTER_AS_OF)).isFalse();
    }

    @Test
    void aKnownFalseConditionLeavesNothingMissing() {
        FactsBuilder facts = cylinder().manufactured(YearMonth.of(2020, 2)).coated(false)
                .service(new Service(Lading.LPG, null,
                        null));
        assertThat(shell(assess(facts))).isEqualTo(new Outcome.Due(YearMonth.of(2025, 2)));
    }

    @Test
    void whatTheAnswerDependsOnIsNamed() {
        assertThat(missing(assess(cylinder().coated(null)))).containsExactly(ReasonCode.MISSING_COATED);
        assertThat(missing(assess(cylinder().coated(null).service(new Service(Lading.LPG, null, null)))))
                .containsExactly(ReasonCode.MISSING_COATED, ReasonCode.MISSING_EXCLUSIVE,
                        ReasonCode.MISSING_CORROSION_FREE);
        assertThat(missing(assess(cylinder().manufactured(null)))).containsExactly(ReasonCode.MISSING_MANUFACTURED);
        assertThat(missing(assess(cylinder().requalifications(null))))
                .containsExactly(ReasonCode.MISSING_REQUALIFICATIONS);
        assertThat(missing(assess(cylinder().jurisdiction(null)))).containsExactly(ReasonCode.MISSING_JURISDICTION);
        assertThat(missing(assess(cylinder().kind(null)))).containsExactly(ReasonCode.MISSING_KIND);
        assertThat(missing(assess(cylinder().specification(null)))).containsExactly(ReasonCode.MISSING_SPECIFICATION);
        assertThat(missing(assess(cylinder().jurisdiction(new Jurisdiction("FR")))))
                .containsExactly(ReasonCode.NO_RULE_HELD);
    }

    @Test
    void aMonthWithNoMethodIsAMissingFact() {
        FactsBuilder facts = cylinder().requalifications(List.of(new Requalification(YearMonth.of(2020, 5), null, false,
                false, Cases.RIN, false, Requalification.Result.PASSED)));
        assertThat(missing(assess(facts))).containsExactly(ReasonCode.MISSING_METHOD);
    }

    /** 180.205(g)(1): the expansion test is the default; a proof test counts only where (d), (e) or (j) offer it. */
    @Test
    void aMethodThatNoRuleAcceptsDecidesNothing() {
        FactsBuilder facts = cylinder().coated(false).requalifications(List.of(mark("2024-05", Method.PROOF_PRESSURE)));
        assertThat(missing(assess(facts))).containsExactly(ReasonCode.METHOD_NOT_ACCEPTED);
        FactsBuilder aluminium = visual("2024-05").specification(Specification.parse("DOT-3AL1800"));
        assertThat(missing(assess(aluminium))).containsExactly(ReasonCode.METHOD_NOT_ACCEPTED);
    }

    /** 180.209(g): a RIN is needed after 2004-05-31; "3-99E" is lawful without. */
    @ParameterizedTest
    @CsvSource({"2004-05,false", "2004-06,true"})
    void aMarkAfterMay2004NeedsItsRin(YearMonth month, boolean lacks) {
        Requalification bare = Requalification.passed(month, Method.EXTERNAL_VISUAL);
        assertThat(bare.lacksRin()).isEqualTo(lacks);
        FactsBuilder facts = cylinder().manufactured(YearMonth.of(1990, 1)).requalifications(List.of(bare));
        assertThat(assess(facts).mayFill().refusedFor(ReasonCode.RIN_NOT_RECORDED)).isEqualTo(lacks);
    }

    @Test
    void aMissingRinLeavesTheDueMonthAndBarsTheFill() {
        Requalification bare = Requalification.passed(YearMonth.of(2024, 5), Method.EXTERNAL_VISUAL);
        Assessment assessment = assess(cylinder().requalifications(List.of(bare)));
        assertThat(shell(assessment)).isEqualTo(new Outcome.Due(YearMonth.of(2029, 5)));
        assertThat(assessment.status()).isEqualTo(Status.IN_DATE);
        assertThat(assessment.mayFill().reasons()).extracting(Reason::code)
                .containsExactly(ReasonCode.RIN_NOT_RECORDED);
        Requalification seen = new Requalification(bare.month(), bare.method(), false, false, null, true,
                Requalification.Result.PASSED);
        assertThat(assess(cylinder().requalifications(List.of(seen))).mayFill().allowed()).isTrue();
    }

    @Test
    void everyFactThatBarsAFillIsTold() {
        Assessment assessment = assess(
                visual("2016-05").marksLegible(null).ownerConsent(false).condition(null).holds(null)
                        .waterCapacity(null).specification(Specification.parse("DOT-4B150")));
        assertThat(assessment.mayFill().reasons()).extracting(Reason::code).containsExactlyInAnyOrder(
                ReasonCode.OVERDUE,
                ReasonCode.MISSING_MARKS_LEGIBLE, ReasonCode.OWNER_CONSENT_REFUSED, ReasonCode.SERVICE_PRESSURE_TOO_LOW,
                ReasonCode.MISSING_CONDITION, ReasonCode.MISSING_HOLDS);
    }

    @Test
    void damageBarsWhateverTheDate() {
        Condition dented = new Condition(List.of("DENT"), new BigDecimal("5.0"), true, true, null, null);
        Assessment assessment = assess(visual("2024-05").condition(dented));
        assertThat(assessment.status()).isEqualTo(Status.IN_DATE);
        assertThat(assessment.mayFill().reasons()).extracting(Reason::code).containsExactlyInAnyOrder(
                ReasonCode.DAMAGED, ReasonCode.DAMAGED, ReasonCode.OVERHEATED, ReasonCode.FIRE_EXPOSED,
                ReasonCode.TARE_LOSS);
        assertThat(assessment.mayFill().reasons()).filteredOn(reason -> reason.code() == ReasonCode.DAMAGED).extracting(
                reason -> reason.citation() == null ? null : reason.citation().section())
                .containsExactlyInAnyOrder("180.205(d); 173.301(a)(2)", "180.209(c)");
        assertThat(assessment.mayCarry().allowed() || assessment.mayUse().allowed()).isFalse();
    }

    /** NFPA 58 annex C.3.2.2: fire ends an aluminium cylinder. */
    @Test
    void fireEndsA4E() {
        Condition burnt = new Condition(List.of(), null, null, true, null, null);
        FactsBuilder facts = visual("2024-05").specification(Specification.parse("DOT-4E240")).condition(burnt);
        assertThat(assess(facts).status()).isEqualTo(Status.CONDEMNED);
    }

    /** A rejected one may come back by a later requalification; a condemned one never. */
    @Test
    void rejectionIsLiftedAndCondemnationIsNot() {
        Condition rejected = new Condition(List.of(), null, null, null, LocalDate.of(2025, 3, 10), null);
        assertThat(assess(visual("2025-03").condition(rejected)).status()).isEqualTo(Status.REJECTED);
        assertThat(assess(visual("2025-04").condition(rejected)).status()).isEqualTo(Status.IN_DATE);
        Requalification condemned = new Requalification(YearMonth.of(2020, 1), Method.EXTERNAL_VISUAL, false, false,
                null,
                false, Requalification.Result.CONDEMNED);
        Assessment assessment = assess(cylinder().requalifications(List.of(condemned, mark("2025-04",
                Method.EXTERNAL_VISUAL))));
        assertThat(assessment.status()).isEqualTo(Status.CONDEMNED);
    }

    @Test
    void marksOfCanadasPredecessorsFollowTheTable() {
        FactsBuilder facts = cylinder().manufactured(YearMonth.of(2024, 5))
                .specification(Specification.parse("CTC-4BA240"));
        assertThat(shell(assess(facts))).isEqualTo(new Outcome.Due(YearMonth.of(2029, 5)));
        FactsBuilder dual = cylinder().specification(Specification.parse("TC-4BAM17/DOT-4BA240"));
        assertThat(shell(assess(dual))).isEqualTo(new Outcome.Due(YearMonth.of(2016, 5)));
    }

    @Test
    void aContradictionIsNotJudged() {
        assertThat(missing(assess(visual("2004-04")))).containsExactly(ReasonCode.CONTRADICTORY_FACTS);
    }

    /** "10 years after expiration of the initial 12-year period": marks cannot show it, so an early S counts from itself. */
    @Test
    void earlyAndLateMarksCountFromThemselves() {
        FactsBuilder early = cylinder().manufactured(YearMonth.of(2015, 6)).requalifications(List.of(mark("2020-02",
                Method.PROOF_PRESSURE)));
        assertThat(shell(assess(early))).isEqualTo(new Outcome.Due(YearMonth.of(2030, 2)));
        assertThat(shell(assess(visual("2022-04").manufactured(YearMonth.of(2015, 6)))))
                .isEqualTo(new Outcome.Due(YearMonth
                        .of(2027, 4)));
    }
}
