package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.citations;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.notHeld;
import static org.collarbook.regulation.traps.Asked.on;
import static org.collarbook.regulation.traps.Asked.today;

import java.time.YearMonth;
import java.util.Set;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.WaterCapacity;
import org.junit.jupiter.api.Test;

/** TDGR 1.3.1 takes the CSA standards as amended: rules have an edition, a first day and the end of a transition. */
@Trap(of = Catalogue.WORLD, number = 12)
class StandardsMoveUnderTheLawTest {

    @Test
    void aStandardIsCitedWithItsEditionAndWhoTellsIt() {
        assertThat(citations().filter(citation -> citation.instrument().startsWith("CSA"))).isNotEmpty()
                .allSatisfy(citation -> {
                    assertThat(citation.edition()).isNotBlank();
                    assertThat(citation.basis().onByDefault() && !citation.url().startsWith("http")).isFalse();
                });
        assertThat(notHeld("CA", "TDGR 5.10(1)", "CSA standards")).isTrue();
    }

    /** 3T by ultrasonic examination: HM-234, 85 FR 85380, effective 2021-01-27. */
    @Test
    void beforeItsFirstDayARuleSaysNothing() {
        var tube = marked(cylinder("DOT-3T2400", "2001-02"), "2019-04", Method.ULTRASONIC);
        assertThat(due(on("2021-01-26", tube))).isEqualTo("UNDETERMINED");
        assertThat(due(on("2021-01-27", tube))).isEqualTo("2024-04");
    }

    /** BC gave old relief valves until 2024-01-01 (fuelslc.com); what was made later had ten years from the start. */
    @Test
    void aTransitionEnds() {
        var tank = Cases.stationary().jurisdiction(new Jurisdiction("CA-BC")).waterCapacity(
                WaterCapacity.gallons("5000")).enable(Set.of("SECONDARY"));
        assertThat(due(today(tank.manufactured(YearMonth.of(1995, 6))), Requirement.RELIEF_VALVE))
                .isEqualTo("2024-01");
        assertThat(due(today(tank.manufactured(YearMonth.of(2006, 10))), Requirement.RELIEF_VALVE))
                .isEqualTo("2016-10");
        assertThat(today(tank).mayFill().refusedFor(ReasonCode.OVERDUE)).isTrue();
    }
}
