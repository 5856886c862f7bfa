package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Overfilling prevention devices. NFPA 58 itself was not read: sizes, day and exemptions as a fire company's page
 * (www.oocities.org/mifflinfire1/propopd.html) tells them of the 1998 and 2001 editions, and as remembered.
 */
class OverfillPreventionTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

    /** In date whatever its age here: requalified in 2026. */
    private static FactsBuilder cylinder(String waterCapacity) {
        return Facts.builder().jurisdiction(Jurisdiction.US).kind(ContainerKind.CYLINDER)
                .specification(Specification.parse("DOT-4BA240")).manufactured(YearMonth.of(1995, 5))
                .waterCapacity(WaterCapacity.parse(waterCapacity)).coated(true).marksLegible(true).ownerConsent(true)
                .service(new Service(new Lading("LPG"), true, true)).condition(Condition.SOUND).holds(List.of())
                .requalifications(List.of(new Requalification(YearMonth.of(2026, 5), Method.EXTERNAL_VISUAL, false,
                        false, Rin.parse("A123"), false, Requalification.Result.PASSED)));
    }

    private static Fittings fitted(@Nullable Boolean device, Fittings.@Nullable Label label) {
        return new Fittings(null, device, label, null);
    }

    private static Assessment on(FactsBuilder facts) {
        return BOOK.assess(facts.enable(Set.of("us.nfpa58.overfill")).build(), DAY);
    }

    private static boolean tellsThatItIsOff(Assessment assessment) {
        return assessment.reasons().stream().anyMatch(reason -> reason.code() == ReasonCode.RULE_OFF
                && reason.citation() != null && reason.citation().section().equals("overfilling prevention devices"));
    }

    @Test
    void whileItIsOffItIsToldUnlessADeviceIsOnRecord() {
        var unknown = BOOK.assess(cylinder("47.6 lb").build(), DAY);
        assertThat(unknown.mayFill().allowed()).isTrue();
        assertThat(tellsThatItIsOff(unknown)).isTrue();
        var none = BOOK.assess(cylinder("47.6 lb").fittings(fitted(false, null)).build(), DAY);
        assertThat(tellsThatItIsOff(none)).isTrue();
        var fitted = BOOK.assess(cylinder("47.6 lb").fittings(fitted(true, null)).build(), DAY);
        assertThat(tellsThatItIsOff(fitted)).isFalse();
    }

    @Test
    void switchedOnUnknownIsNo() {
        assertThat(on(cylinder("47.6 lb")).mayFill().reasons()).extracting(Reason::code)
                .containsExactly(ReasonCode.MISSING_OVERFILL_PREVENTION);
        assertThat(on(cylinder("47.6 lb").fittings(fitted(false, null))).mayFill().reasons()).extracting(Reason::code)
                .containsExactly(ReasonCode.NO_OVERFILL_PREVENTION);
        assertThat(on(cylinder("47.6 lb").fittings(fitted(true, null))).mayFill().allowed()).isTrue();
    }

    /** 42 % of the water capacity, 173.304a: 4 lb are 9.5238 lb of water, 40 lb are 95.238. */
    @ParameterizedTest
    @CsvSource({"9.52 lb,true", "9.53 lb,false", "47.6 lb,false", "95.2 lb,false", "95.24 lb,true", "238 lb,true"})
    void fromFourToFortyPounds(String waterCapacity, boolean mayFill) {
        assertThat(on(cylinder(waterCapacity)).mayFill().allowed()).isEqualTo(mayFill);
    }

    @ParameterizedTest
    @CsvSource({"HORIZONTAL,1998-09,true", "HORIZONTAL,1998-10,false", "INDUSTRIAL_TRUCK,2020-01,true",
            "WELDING_AND_CUTTING,2020-01,true", ",1990-01,false"})
    void aLabelExempts(Fittings.@Nullable Label label, YearMonth made, boolean mayFill) {
        assertThat(on(cylinder("47.6 lb").manufactured(made).fittings(fitted(null, label))).mayFill().allowed())
                .isEqualTo(mayFill);
    }

    @Test
    void aRecordedUseOnAnIndustrialTruckExemptsAndAnUnknownOneDoesNot() {
        assertThat(on(cylinder("47.6 lb").use(Use.INDUSTRIAL_TRUCK)).mayFill().allowed()).isTrue();
        assertThat(on(cylinder("47.6 lb").use(Use.FUEL)).mayFill().allowed()).isFalse();
    }

    /** A fact like a hold: whatever the rule that it would rest on. */
    @Test
    void aReliefValveTakenOutIsNeverAYes() {
        var out = BOOK.assess(cylinder("47.6 lb").fittings(new Fittings(false, null, null, null)).build(), DAY);
        assertThat(out.mayFill().reasons()).extracting(Reason::code).containsExactly(ReasonCode.RELIEF_VALVE_REMOVED);
        assertThat(out.mayCarry().allowed()).isFalse();
        assertThat(out.mayUse().allowed()).isFalse();
        var before = cylinder("47.6 lb").fittings(new Fittings(false, null, null, DAY.plusDays(1))).build();
        assertThat(BOOK.assess(before, DAY).mayFill().allowed()).isTrue();
        assertThat(BOOK.assess(before, DAY).gives(ReasonCode.FACT_AFTER_AS_OF)).isTrue();
    }

    /** 29 CFR 1910.110(b)(5): the plate of an ASME tank is legible, or nothing is put in. */
    @ParameterizedTest
    @CsvSource({",MISSING_MARKS_LEGIBLE", "false,MARKS_NOT_LEGIBLE"})
    void aTankWithoutALegibleDataPlateIsNotFilled(@Nullable Boolean legible, ReasonCode why) {
        var tank = Facts.builder().jurisdiction(Jurisdiction.US).kind(ContainerKind.STATIONARY_TANK)
                .specification(Specification.parse("ASME")).waterCapacity(WaterCapacity.parse("500 gal"))
                .service(new Service(new Lading("LPG"), true, true)).marksLegible(legible).build();
        assertThat(BOOK.assess(tank, DAY).mayFill().reasons()).extracting(Reason::code).contains(why);
    }
}
