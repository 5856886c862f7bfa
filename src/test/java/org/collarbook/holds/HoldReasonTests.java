package org.collarbook.holds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.holds.LiftedBy.COMPETENT_PERSON;

import org.collarbook.regulation.Basis;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Method;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class HoldReasonTests {

    /**
     * 49 CFR 180.205(d): dents, corrosion, leakage, thermal damage, accident; 180.209(c): 5 % of the tare; 173.301(a)(2):
     * defective valve; (b): legible marks; (e): consent. The others are common practice with no source.
     */
    @ParameterizedTest
    @CsvSource({"OVERFILLED_OR_DISCHARGED,,REQUALIFICATION",
            "FILLED_NOT_ALLOWED,,REQUALIFICATION COMPETENT_PERSON", "DENTED,180.205(d),REQUALIFICATION",
            "CORRODED,180.205(d),REQUALIFICATION", "LEAKING,180.205(d),REQUALIFICATION",
            "FIRE_OR_OVERHEATED,180.205(d),REQUALIFICATION", "ACCIDENT,180.205(d),REQUALIFICATION",
            "ILLEGIBLE_MARKS,173.301(b),COMPETENT_PERSON",
            "COLLAR_OR_FOOT_RING_MISSING,,REQUALIFICATION COMPETENT_PERSON", "TARE_LOSS,180.209(c),REQUALIFICATION",
            "VALVE_DEFECT,173.301(a)(2),REQUALIFICATION COMPETENT_PERSON", "RECALLED,,COMPETENT_PERSON CLERK",
            "LOST,,CLERK", "IDENTITY_DISPUTED,,CLERK", "OWNER_CONSENT_MISSING,173.301(e),CLERK"})
    void eachSaysWhereItStandsAndWhatLiftsIt(HoldReason reason, String section, String liftedBy) {
        if (section == null) {
            assertThat(reason.citation().basis()).isEqualTo(Basis.COMMON_PRACTICE);
            assertThat(reason.citation().edition()).isEqualTo("common practice, no source");
        } else {
            assertThat(reason.citation().basis()).isEqualTo(Basis.TEXT);
            assertThat(reason.citation().instrument() + " " + reason.citation().section())
                    .isEqualTo("49 CFR " + section);
        }
        assertThat(reason.liftedBy().stream().sorted().map(Enum::name)).containsExactly(liftedBy.split(" "));
        assertThat(reason.sentence()).endsWith(".");
    }

    /** 49 CFR 180.209(g) lets a look replace the test only when the periodic requalification is due. */
    @Test
    void aLookAloneDoesNotReplaceTheTestThatDamageCallsFor() {
        assertThat(HoldReason.DENTED.isLiftedBy(Method.EXTERNAL_VISUAL)).isFalse();
        assertThat(HoldReason.TARE_LOSS.isLiftedBy(Method.EXTERNAL_VISUAL)).isFalse();
        assertThat(HoldReason.DENTED.isLiftedBy(Method.PROOF_PRESSURE)).isTrue();
        assertThat(HoldReason.OVERFILLED_OR_DISCHARGED.isLiftedBy(Method.EXTERNAL_VISUAL)).isTrue();
        assertThat(HoldReason.VALVE_DEFECT.isLiftedBy(Method.VOLUMETRIC_EXPANSION)).isTrue();
        assertThat(HoldReason.VALVE_DEFECT.isLiftedBy(Method.VALVE_REPLACED)).isFalse();
        assertThat(HoldReason.LOST.isLiftedBy(Method.VOLUMETRIC_EXPANSION)).isFalse();
    }

    @ParameterizedTest
    @EnumSource
    void ofAStationaryTankAPersonLiftsWhatNoRequalificationCan(HoldReason reason) {
        assertThat(reason.liftedBy(ContainerKind.STATIONARY_TANK)).doesNotContain(LiftedBy.REQUALIFICATION)
                .isNotEmpty();
        if (reason.liftedBy().contains(LiftedBy.REQUALIFICATION)) {
            assertThat(reason.liftedBy(ContainerKind.STATIONARY_TANK)).containsExactly(COMPETENT_PERSON);
        } else {
            assertThat(reason.liftedBy(ContainerKind.STATIONARY_TANK)).isEqualTo(reason.liftedBy());
        }
    }
}
