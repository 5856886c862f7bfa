package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.collar;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.exclusively;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.today;
import static org.collarbook.regulation.traps.Asked.undetermined;

import org.collarbook.regulation.Cases;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Readings;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Use;
import org.collarbook.regulation.WaterCapacity;
import org.junit.jupiter.api.Test;

/** A bare mark is 5, 10 or 12 years by the service, S is 10, 7 or the shell alone, or a siphon tube: 49 CFR 180.213(f). */
@Trap(of = Catalogue.US, number = 2)
class OneSuffixSeveralPeriodsTest {

    private static FactsBuilder lpg() {
        return cylinder("DOT-4BA240", "2008-02");
    }

    @Test
    void theBareMarkFollowsTheService() {
        assertThat(due(today(marked(lpg(), "2020-02", Method.VOLUMETRIC_EXPANSION)))).isEqualTo("2032-02");
        assertThat(due(today(marked(lpg().coated(false), "2020-02", Method.VOLUMETRIC_EXPANSION))))
                .isEqualTo("2025-02");
        FactsBuilder bromide = lpg().service(exclusively("METHYL_BROMIDE")).lined(true);
        assertThat(due(today(marked(bromide, "2020-02", Method.VOLUMETRIC_EXPANSION)))).isEqualTo("2030-02");
    }

    @Test
    void theSFollowsTheUse() {
        assertThat(due(today(marked(lpg(), "2020-02", Method.PROOF_PRESSURE)))).isEqualTo("2030-02");
        FactsBuilder extinguisher = lpg().use(Use.FIRE_EXTINGUISHER).service(exclusively("CARBON_DIOXIDE"));
        assertThat(due(today(marked(extinguisher.waterCapacity(WaterCapacity.pounds("12.1")), "2020-02",
                Method.PROOF_PRESSURE)))).isEqualTo("2027-02");
        assertThat(due(today(marked(extinguisher.waterCapacity(WaterCapacity.pounds("12")), "2020-02",
                Method.PROOF_PRESSURE)))).isEqualTo("2032-02");
    }

    /** PHMSA letter 13-0032 met an S for a siphon tube. */
    @Test
    void theSIsReadByTheSpecification() {
        assertThat(Readings.value(RequalificationMark.read("2-20S", collar("DOT-8"))).methods())
                .containsExactly(Method.SHELL_ONLY);
        var proof = RequalificationMark.read("2-20S", collar("DOT-4BA240"));
        assertThat(Readings.value(proof).methods()).containsExactly(Method.PROOF_PRESSURE);
        assertThat(Readings.warnings(proof)).anyMatch(warning -> warning.contains("siphon"));
        assertThat(Readings.ambiguous(RequalificationMark.read("2-20S", Collar.unknown(Cases.TODAY))).readings())
                .hasSize(2);
    }

    @Test
    void aProofTestDoesNothingForSeries8() {
        FactsBuilder acetylene = cylinder("DOT-8", "2012-02").service(exclusively("ACETYLENE"));
        assertThat(due(today(marked(acetylene, "2020-02", Method.SHELL_ONLY)))).isEqualTo("2030-02");
        assertThat(undetermined(today(marked(acetylene, "2020-02", Method.PROOF_PRESSURE))))
                .containsExactly(ReasonCode.METHOD_NOT_ACCEPTED);
    }
}
