package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.exclusively;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.notHeld;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;

import org.collarbook.regulation.Status;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where no rule is found the answer is that it is not known, never ten years by default. */
@Trap(of = Catalogue.WORLD, number = 15)
class NoRuleIsUnknownTest {

    /** A place without rules; designs and ladings that no rule of a place names: newly made, and with all rules on. */
    @ParameterizedTest
    @CsvSource({"FR,EN 1442,LPG", "IN,UN ISO 4706,LPG", "ADR,EN 99999,LPG", "ADR,EN 1442,OXYGEN", "CA,TC-4EM17,LPG",
            "CA,EN 1442,LPG", "AU,EN 1442,OXYGEN", "UN,UN ISO 4706,CHLORINE", "US,UN ISO 4706,XENON",
            "US,DOT-412,LPG"})
    void nothingIsMadeUp(String place, String stamp, String lading) {
        var assessment = today(there(place, cylinder(stamp, "2026-10").service(exclusively(lading))));
        assertThat(assessment.status()).as("%s", assessment).isEqualTo(Status.UNDETERMINED);
        assertThat(assessment.firstDue()).isNull();
        assertThat(may(assessment)).isEqualTo("---");
    }

    @Test
    void whatIsKnowinglyLeftOutIsListed() {
        assertThat(notHeld("CA", "TC-4EM", "undetermined")).isTrue();
        assertThat(notHeld("US", "180.207(c)", "undetermined")).isTrue();
        assertThat(notHeld("NZ", "Schedule 22", "other receptacles")).isTrue();
    }
}
