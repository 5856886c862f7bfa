package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;

import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.ReliefValve;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Over 2,500 US water gallons or at most so many (BC D-BP-2016-01); under 13,250 L, of which 3,500 US gallons fall short
 * by a litre and are yet read as excluded (Canadian Propane Association on CSA B620:20).
 */
@Trap(of = Catalogue.WORLD, number = 10)
class StrictAndInclusiveLimitsTest {

    @ParameterizedTest
    @CsvSource({"2500 gal,2025-06", "2500.1 gal,2010-06"})
    void aTankOfTheVeryLimitIsASmallOne(String capacity, String due) {
        FactsBuilder tank = there("CA-BC", Cases.stationary()).manufactured(YearMonth.of(2000, 6))
                .reliefValve(ReliefValve.INTERNAL).waterCapacity(WaterCapacity.parse(capacity)).enable(Set.of());
        assertThat(due(today(tank), Requirement.RELIEF_VALVE)).isEqualTo(due);
        assertThat(today(tank).mayFill().refusedFor(ReasonCode.OVERDUE)).isTrue();
    }

    private static FactsBuilder highwayTank(String capacity) {
        return marked(there("CA", Cases.cylinder()).kind(ContainerKind.CARGO_TANK)
                .specification(Specification.parse("TC-331")).manufactured(YearMonth.of(2015, 2))
                .waterCapacity(WaterCapacity.parse(capacity)), "2021-05", Method.PERIODIC);
    }

    @Test
    void theLimitInLitresIsStrict() {
        assertThat(due(today(highwayTank("13248 L")), Requirement.PERIODIC_TEST)).isEqualTo("2031-05");
        assertThat(due(today(highwayTank("13250 L")), Requirement.PERIODIC_TEST)).isEqualTo("2026-05");
    }

    @Test
    void theBandThatIsReadBothWaysIsAskedAbout() {
        for (String capacity : List.of("3500 gal", "13249.9 L")) {
            var between = today(highwayTank(capacity));
            assertThat(Asked.clock(between, Requirement.PERIODIC_TEST).outcome()).isInstanceOfSatisfying(
                    Outcome.Undetermined.class, outcome -> assertThat(outcome.reasons()).extracting(Reason::code)
                            .containsExactly(ReasonCode.READINGS_DIFFER));
            assertThat(Asked.may(between)).isEqualTo("---");
        }
    }
}
