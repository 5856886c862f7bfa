package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A rule that dates any mark dates whole inspections: a look from outside, or one test of several, is none. */
class PartialInspectionTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();

    private static Assessment assess(String place, FactsBuilder facts) {
        return BOOK.assess(facts.jurisdiction(new Jurisdiction(place)).build(), Cases.TODAY);
    }

    private static FactsBuilder european(Requalification done) {
        return Cases.cylinder().specification(Specification.parse("EN 1442 P15Y")).requalifications(List.of(done));
    }

    /** ADR 6.2.1.6 asks for a periodic inspection and test; P200(10) v(2) for its period. */
    @Test
    void aBareMarkStandsForAWholeOne() {
        Assessment bare = assess("ADR", european(Requalification.passed(YearMonth.of(2020, 5), null)));
        assertThat(bare.firstDue()).isEqualTo(YearMonth.of(2035, 5));
        assertThat(bare.mayUse().allowed()).isTrue();
    }

    @ParameterizedTest
    @EnumSource(value = Method.class, names = {"EXTERNAL_VISUAL", "EDDY_CURRENT_VISUAL", "V", "K", "INTERMEDIATE"})
    void aPartIsNotTheWhole(Method part) {
        Assessment looked = assess("ADR", european(Cases.mark("2020-05", part)));
        assertThat(looked.status()).isEqualTo(Status.UNDETERMINED);
        assertThat(looked.firstDue()).isNull();
        assertThat(looked.mayUse().refusedFor(ReasonCode.METHOD_NOT_ACCEPTED)).isTrue();
    }

    /** TDGR 1.50(5): a proof test with a look inside and outside, or the periodic inspection of CSA B341. */
    @Test
    void aBalloonCylinderIsTestedAndNotOnlyLookedAt() {
        FactsBuilder balloon = Cases.cylinder().specification(Specification.parse("TC-4BAM17"))
                .use(Use.HOT_AIR_BALLOON);
        assertThat(assess("CA", balloon.requalifications(List.of(Cases.mark("2020-05", Method.PROOF_PRESSURE))))
                .firstDue()).isEqualTo(YearMonth.of(2030, 5));
        assertThat(assess("CA", balloon.requalifications(List.of(Cases.mark("2020-05", Method.EXTERNAL_VISUAL))))
                .firstDue()).isNull();
    }

    /** A highway tank bears marks of several tests: a leakage test, or a mark that tells none, is not the inspection. */
    @Test
    void aHighwayTanksYearlyTestIsNotItsInspection() {
        FactsBuilder tank = Cases.cylinder().kind(ContainerKind.CARGO_TANK)
                .specification(Specification.parse("TC-331")).manufactured(YearMonth.of(2005, 11))
                .waterCapacity(WaterCapacity.parse("13000 L")).enable(Set.of("SECONDARY"));
        Clock leakage = assess("CA", tank.requalifications(List.of(Cases.mark("2026-03", Method.K))))
                .clock(Requirement.PERIODIC_TEST);
        assertThat(leakage).isNotNull().extracting(Clock::outcome).isEqualTo(new Outcome.Due(YearMonth.of(2015, 11)));
        Assessment bare = assess("CA", tank.requalifications(List.of(Requalification.passed(YearMonth.of(2026, 3),
                null))));
        assertThat(bare.clock(Requirement.PERIODIC_TEST)).isNotNull().extracting(Clock::outcome)
                .isInstanceOf(Outcome.Undetermined.class);
        assertThat(bare.mayCarry().allowed()).isFalse();
    }

    /** A certificate that is recorded without its interval may be the shorter one: the table does not stand in for it. */
    @Test
    void aCertificateToldInPartIsAskedFor() {
        FactsBuilder cylinder = Cases.cylinder().specification(Specification.parse("TC-4BWM16"))
                .manufactured(YearMonth.of(2018, 4)).enable(Set.of("SECONDARY"));
        assertThat(assess("CA", cylinder).firstDue()).isEqualTo(YearMonth.of(2028, 4));
        Assessment partly = assess("CA", cylinder.permit(new Permit("SU 5931", LocalDate.of(2030, 1, 1), null)));
        assertThat(partly.status()).isEqualTo(Status.UNDETERMINED);
        assertThat(partly.mayUse().refusedFor(ReasonCode.MISSING_PERMIT)).isTrue();
        assertThat(assess("CA", cylinder.permit(new Permit("SU 5931", LocalDate.of(2020, 1, 1), null))).firstDue())
                .as("expired").isEqualTo(YearMonth.of(2028, 4));
    }
}
