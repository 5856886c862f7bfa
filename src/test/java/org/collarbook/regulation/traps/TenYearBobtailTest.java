package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.exclusively;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.today;

import java.time.YearMonth;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.WaterCapacity;
import org.junit.jupiter.api.Test;

/**
 * Ten years for an MC 331 of NQT steel under 3,500 gallons in dedicated propane service, and for no other: 49 CFR
 * 180.407(c) Note 5; PHMSA letter 18-0121 says that propane is meant and no other LP-gas.
 */
@Trap(of = Catalogue.US, number = 17)
class TenYearBobtailTest {

    private static FactsBuilder bobtail() {
        return Cases.bobtail(YearMonth.of(2026, 4)).service(exclusively("PROPANE"));
    }

    private static String pressureTest(FactsBuilder facts) {
        return due(today(facts), Requirement.PRESSURE);
    }

    @Test
    void allMet() {
        assertThat(pressureTest(bobtail())).isEqualTo("2036-04");
        assertThat(due(today(bobtail()), Requirement.INTERNAL_VISUAL)).isEqualTo("2036-04");
        assertThat(due(today(bobtail()), Requirement.EXTERNAL_VISUAL)).isEqualTo("2027-04");
        assertThat(due(today(bobtail()), Requirement.LEAKAGE)).isEqualTo("2027-04");
    }

    @Test
    void withOneFailingItIsFive() {
        assertThat(pressureTest(bobtail().waterCapacity(WaterCapacity.gallons("3500")))).isEqualTo("2031-04");
        assertThat(pressureTest(bobtail().steel(Steel.QT))).isEqualTo("2031-04");
        assertThat(pressureTest(bobtail().specification(Specification.parse("MC-330")))).isEqualTo("2031-04");
        assertThat(pressureTest(bobtail().service(new Service(new Lading("PROPANE"), false, true))))
                .isEqualTo("2031-04");
        assertThat(pressureTest(bobtail().service(exclusively("BUTANE")))).isEqualTo("2031-04");
    }

    @Test
    void anUnknownSteelIsAskedFor() {
        var unknown = today(bobtail().steel(null));
        assertThat(unknown.clock(Requirement.PRESSURE)).isNotNull().satisfies(clock -> assertThat(clock.outcome())
                .isInstanceOf(Outcome.Undetermined.class));
        assertThat(may(unknown)).isEqualTo("---");
    }

    @Test
    void lpGasThatMayBeMoreThanPropaneIsTold() {
        assertThat(today(bobtail().service(Service.LPG)).gives(ReasonCode.FOR_PROPANE_ALONE)).isTrue();
        assertThat(today(bobtail()).gives(ReasonCode.FOR_PROPANE_ALONE)).isFalse();
    }
}
