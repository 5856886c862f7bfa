package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;

import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Steel;
import org.junit.jupiter.api.Test;

/**
 * Fifteen years are a status of an owner's group of welded steel cylinders, which can be lost, and no property of the
 * design: ADR P200(10) v(2) and (12); code of practice 31 in the United Kingdom (second-hand).
 */
@Trap(of = Catalogue.WORLD, number = 6)
class FifteenYearsCanBeLostTest {

    @Test
    void whileItLastsAndOnceItIsLost() {
        var granted = today(there("ADR", cylinder("EN 1442 P15Y", "2014-05")));
        assertThat(due(granted)).isEqualTo("2029-05");
        assertThat(may(granted)).isEqualTo("-CU");
        var lost = today(there("ADR", cylinder("EN 1442 P15Y", "2014-05").extendedPeriod(ExtendedPeriod.NONE)));
        assertThat(due(lost)).as("though P15Y is still stamped").isEqualTo("2024-05");
        assertThat(may(lost)).isEqualTo("---");
        assertThat(due(today(there("ADR", cylinder("EN 1442", "2014-05"))))).isEqualTo("2024-05");
    }

    @Test
    void notForAluminiumOrComposites() {
        var aluminium = today(there("ADR", cylinder("EN 13110 P15Y", "2014-05")));
        assertThat(due(aluminium)).isEqualTo("2024-05");
        assertThat(aluminium.gives(ReasonCode.EXTENSION_IGNORED)).isTrue();
        var composite = today(there("ADR", cylinder("EN 14427 P15Y", "2014-05")));
        assertThat(due(composite)).isEqualTo("2019-05");
        assertThat(composite.gives(ReasonCode.EXTENSION_IGNORED)).isTrue();
    }

    @Test
    void inTheUnitedKingdomByMembership() {
        var member = there("UK", cylinder("EN 1442", "2012-06").steel(Steel.NQT).extendedPeriod(ExtendedPeriod.COP31));
        assertThat(due(today(member))).isEqualTo("2027-06");
        assertThat(due(today(member.extendedPeriod(null)))).isEqualTo("2022-06");
        assertThat(due(today(member.extendedPeriod(ExtendedPeriod.NONE)))).isEqualTo("2022-06");
    }
}
