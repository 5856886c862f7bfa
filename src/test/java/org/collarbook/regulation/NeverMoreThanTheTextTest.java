package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A longer period has all its conditions met, and what was found wrong keeps a container back in every place. */
class NeverMoreThanTheTextTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final Condition LEAKS = new Condition(List.of("LEAK"), null, true, true, null, null);

    private static Assessment assess(FactsBuilder facts) {
        return BOOK.assess(facts.build(), Cases.TODAY);
    }

    private static FactsBuilder star(String lading, boolean exclusive) {
        Requalification star = new Requalification(YearMonth.of(2018, 6), Method.VOLUMETRIC_EXPANSION, true, false,
                Cases.RIN, false, Requalification.Result.PASSED);
        return Cases.cylinder().specification(Specification.parse("DOT-3AA2015")).requalifications(List.of(star))
                .service(new Service(new Lading(lading), exclusive, true));
    }

    /** 49 CFR 180.209(b)(1)(ii), 2019 edition: "used exclusively for"; (b)(3): another gas leaves five years. */
    @ParameterizedTest
    @ValueSource(strings = {"LPG", "NITROGEN", "LIQUEFIED_HYDROCARBON"})
    void aStarIsForOneService(String lading) {
        assertThat(assess(star(lading, true)).firstDue()).isEqualTo(YearMonth.of(2028, 6));
        Assessment shared = assess(star(lading, false));
        assertThat(shared.firstDue()).isEqualTo(YearMonth.of(2023, 6));
        assertThat(shared.mayFill().refusedFor(ReasonCode.OVERDUE)).isTrue();
    }

    /** 49 CFR 180.209(f): "used exclusively for methyl bromide", "commercially free of corroding components". */
    @ParameterizedTest
    @CsvSource({"true, true, 2028-06", "false, true, 2023-06", "true, false, 2023-06"})
    void methylBromideIsExclusiveAndDoesNotCorrode(boolean exclusive, boolean free, YearMonth due) {
        Assessment assessment = assess(Cases.cylinder().lined(true)
                .service(new Service(new Lading("METHYL_BROMIDE"), exclusive, free))
                .requalifications(List.of(Cases.mark("2018-06", Method.VOLUMETRIC_EXPANSION))));
        Clock shell = assessment.clock(Requirement.SHELL);
        assertThat(shell).isNotNull();
        assertThat(shell.outcome()).isEqualTo(new Outcome.Due(due));
    }

    /** 49 CFR 180.407(c): the row of chlorine is not that of LP-gas, and was not read. */
    @Test
    void aChlorineTankIsNotFineForWantOfARule() {
        Assessment assessment = assess(Cases.bobtail(YearMonth.of(2026, 10))
                .service(new Service(new Lading("CHLORINE"), true, true)));
        assertThat(assessment.status()).isEqualTo(Status.UNDETERMINED);
        assertThat(assessment.mayCarry().refusedFor(ReasonCode.NO_RULE_HELD)).isTrue();
    }

    /** ADR 4.1.6.10 and 49 CFR 180.205(d) say it; elsewhere caution does, for a recorded fact hangs on no rule. */
    @ParameterizedTest
    @CsvSource({"NZ, EN 1442, CYLINDER", "CA, TC-4BAM17, CYLINDER", "CA, CTC-4BA240, CYLINDER",
            "ADR, EN 14427, CYLINDER",
            "AU, EN 1442, CYLINDER", "UK, ASME, STATIONARY_TANK", "UN, UN T50, PORTABLE_TANK",
            "US, DOT-4BA240, CYLINDER"})
    void whatWasFoundWrongStandsInEveryPlace(String place, String stamp, ContainerKind kind) {
        FactsBuilder facts = Cases.cylinder().jurisdiction(new Jurisdiction(place)).kind(kind)
                .specification(Specification.parse(stamp)).manufactured(YearMonth.of(2025, 10))
                .enable(Set.of("SECONDARY"));
        assertThat(assess(facts).mayUse().allowed()).isTrue();
        Assessment found = assess(facts.condition(LEAKS));
        for (Permission one : List.of(found.mayFill(), found.mayCarry(), found.mayUse())) {
            for (ReasonCode code : List.of(ReasonCode.DAMAGED, ReasonCode.OVERHEATED, ReasonCode.FIRE_EXPOSED)) {
                assertThat(one.refusedFor(code)).as("%s %s", place, code).isTrue();
            }
        }
    }

    /** Transport Canada certificates SU 5931 and SU 10054 are for other cylinders each. */
    @Test
    void anotherCertificateSaysNothing() {
        FactsBuilder facts = Cases.cylinder().jurisdiction(new Jurisdiction("CA"))
                .specification(Specification.parse("TC-SU5931")).manufactured(YearMonth.of(2020, 6));
        Permit own = new Permit("SU 5931", Cases.TODAY.plusYears(1), 10);
        Permit other = new Permit("SU 10054", Cases.TODAY.plusYears(1), 10);
        assertThat(assess(facts.permit(own)).firstDue()).isEqualTo(YearMonth.of(2030, 6));
        assertThat(assess(facts.permit(other)).status()).isEqualTo(Status.UNDETERMINED);
    }

    /** 49 CFR 180.407(a)(1) spares a tank filled before its test was due; of 2016 no rule is held that could tell. */
    @Test
    void aFillOfBeforeTheRulesIsNotJudgedInTime() {
        Assessment assessment = assess(Cases.bobtail(YearMonth.of(2010, 3)).filledOn(LocalDate.of(2016, 12, 5)));
        assertThat(assessment.status()).isEqualTo(Status.OVERDUE);
        assertThat(assessment.mayCarry().refusedFor(ReasonCode.FILL_NOT_JUDGED)).isTrue();
        assertThat(assessment.mayUse().allowed()).isFalse();
    }

    /** EN 14427 and EN 12245 are standards of composite cylinders; the ten and fifteen years are for steel. */
    @ParameterizedTest
    @ValueSource(strings = {"EN 14427", "EN 12245"})
    void aCompositeCylinderIsNoSteelOneInBritain(String stamp) {
        FactsBuilder facts = Cases.cylinder().jurisdiction(new Jurisdiction("UK")).steel(Steel.NQT)
                .manufactured(YearMonth.of(2018, 6)).enable(Set.of("SECONDARY"));
        assertThat(assess(facts.specification(Specification.parse("EN 1442"))).firstDue())
                .isEqualTo(YearMonth.of(2028, 6));
        Assessment composite = assess(facts.specification(Specification.parse(stamp)));
        assertThat(composite.status()).isEqualTo(Status.UNDETERMINED);
        assertThat(composite.mayUse().allowed()).isFalse();
    }

    /** A rule that is off and may concern the tank is told, though a fact that it hangs on is missing. */
    @Test
    void aRuleThatIsOffIsToldOfATankOfUnknownSize() {
        Assessment assessment = assess(Cases.stationary().waterCapacity(null));
        assertThat(assessment.gives(ReasonCode.RULE_OFF)).isTrue();
    }
}
