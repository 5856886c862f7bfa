package org.collarbook.regulation.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.Status;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The engine on a small rule book of no country, which stays as it is whatever the law does. */
class EngineTest {

    private static final RuleBook BOOK = RuleBookLoader.of(RuleBookLoader.shipped("rulebook-frozen/"));

    private static FactsBuilder facts(String stamp) {
        return Facts.builder().jurisdiction(new Jurisdiction("ZZ")).kind(ContainerKind.CYLINDER)
                .specification(Specification
                        .parse(stamp))
                .manufactured(YearMonth.of(2005, 6)).lined(false).requalifications(List.of());
    }

    private static YearMonth due(FactsBuilder facts, String day) {
        return BOOK.assess(facts.build(), LocalDate.parse(day)).firstDue();
    }

    @ParameterizedTest
    @CsvSource({"2029-12-31,2008-06", "2030-01-01,2009-06"})
    void theDayOfEvaluationSelectsTheValue(String day, YearMonth due) {
        assertThat(due(facts("DOT-4BA240"), day)).isEqualTo(due);
    }

    @Test
    void theManufactureSelectsTheValueWhereTheRuleSaysSo() {
        assertThat(due(facts("DOT-4E240"), "2026-01-01")).isEqualTo(YearMonth.of(2010, 6));
        assertThat(due(facts("DOT-4E240").manufactured(YearMonth.of(2010, 1)), "2026-01-01"))
                .isEqualTo(YearMonth.of(2017, 1));
    }

    @Test
    void theLastTestSelectsTheValueWhereTheRuleSaysSo() {
        FactsBuilder facts = facts("DOT-3AL1800");
        facts.requalifications(List.of(Requalification.passed(YearMonth.of(2009, 12), Method.VOLUMETRIC_EXPANSION)));
        assertThat(due(facts, "2026-01-01")).isEqualTo(YearMonth.of(2014, 12));
        facts.requalifications(List.of(Requalification.passed(YearMonth.of(2010, 1), Method.VOLUMETRIC_EXPANSION)));
        assertThat(due(facts, "2026-01-01")).isEqualTo(YearMonth.of(2017, 1));
    }

    /** A rule from memory that would govern is neither applied nor passed over for the next. */
    @Test
    void aRuleThatIsOffIsNotPassedOver() {
        FactsBuilder lined = facts("DOT-4BA240").lined(true);
        Assessment off = BOOK.assess(lined.build(), LocalDate.of(2026, 1, 1));
        assertThat(off.status()).isEqualTo(Status.UNDETERMINED);
        assertThat(off.gives(ReasonCode.RULE_OFF)).isTrue();
        assertThat(due(lined.enable(Set.of("MEMORY")), "2026-01-01")).isEqualTo(YearMonth.of(2015, 6));
        assertThat(due(lined.enable(Set.of("zz.lined")), "2026-01-01")).isEqualTo(YearMonth.of(2015, 6));
    }

    @Test
    void anUnknownConditionOfAHigherRuleLeavesItOpen() {
        Assessment assessment = BOOK.assess(facts("DOT-4BA240").lined(null).build(), LocalDate.of(2026, 1, 1));
        assertThat(assessment.status()).isEqualTo(Status.UNDETERMINED);
        assertThat(assessment.gives(ReasonCode.MISSING_LINED)).isTrue();
    }

    /** Of two marks of one month the one that falls due first governs. */
    @Test
    void twoMarksOfOneMonth() {
        Requalification volumetric = Requalification.passed(YearMonth.of(2020, 1), Method.VOLUMETRIC_EXPANSION);
        Requalification unread = Requalification.passed(YearMonth.of(2020, 1), null);
        FactsBuilder facts = facts("DOT-4BA240").requalifications(List.of(volumetric, unread));
        assertThat(BOOK.assess(facts.build(), LocalDate.of(2021, 1, 1)).status()).isEqualTo(Status.UNDETERMINED);
    }

    @Test
    void theDayOfTheNextSwitchIsKnown() {
        assertThat(BOOK.nextSwitchAfter(LocalDate.of(2026, 1, 1))).isEqualTo(LocalDate.of(2030, 1, 1));
        assertThat(BOOK.nextSwitchAfter(LocalDate.of(2029, 12, 31))).isEqualTo(LocalDate.of(2030, 1, 1));
        assertThat(BOOK.nextSwitchAfter(LocalDate.of(2030, 1, 1))).isNull();
    }
}
