package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.today;
import static org.collarbook.regulation.traps.Asked.whyNotFill;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.ParameterizedTest;

/**
 * Condemned is for good, rejected is not, and damage or 5 % of the tare lost go before a good date: 49 CFR 180.203,
 * 180.205(d), 180.209(c).
 */
@Trap(of = Catalogue.US, number = 9)
class CondemnedIsForeverRejectedIsNotTest {

    private static FactsBuilder testedInMay2025(Condition condition) {
        return marked(cylinder("DOT-4BA240", "2004-05"), "2025-05", Method.VOLUMETRIC_EXPANSION).condition(condition);
    }

    private static Condition tareLoss(String percent) {
        return new Condition(List.of(), new BigDecimal(percent), false, false, null, null);
    }

    @Test
    void noLaterTestLiftsACondemnation() {
        LocalDate before = LocalDate.of(2020, 1, 1);
        var condemned = today(testedInMay2025(new Condition(List.of(), null, false, false, null, before)));
        assertThat(condemned.status()).isEqualTo(Status.CONDEMNED);
        assertThat(may(condemned)).isEqualTo("---");
        var rejected = today(testedInMay2025(new Condition(List.of(), null, false, false, before, null)));
        assertThat(rejected.status()).isEqualTo(Status.IN_DATE);
        assertThat(may(rejected)).isEqualTo("FCU");
    }

    @Test
    void aRejectionStandsUntilATestOfALaterMonth() {
        LocalDate sameMonth = LocalDate.of(2025, 5, 1);
        var rejected = today(testedInMay2025(new Condition(List.of(), null, false, false, sameMonth, null)));
        assertThat(rejected.status()).isEqualTo(Status.REJECTED);
        assertThat(may(rejected)).isEqualTo("---");
    }

    private static FactsBuilder rejectedThenPassed(@Nullable Method rejectedBy, Method passedBy) {
        return cylinder("DOT-4BA240", "2010-05").requalifications(List.of(
                new Requalification(YearMonth.of(2025, 1), rejectedBy, false, false, null, false, Result.REJECTED),
                new Requalification(YearMonth.of(2025, 2), passedBy, false, false, null, true, Result.PASSED)));
    }

    /** 180.203: a rejected cylinder is repaired or rebuilt, and requalified; looking at it from outside is not that. */
    @ParameterizedTest
    @CsvSource({"VOLUMETRIC_EXPANSION, EXTERNAL_VISUAL, false", "PROOF_PRESSURE, EXTERNAL_VISUAL, false",
            ", EXTERNAL_VISUAL, false", ", PROOF_PRESSURE, true",
            "VOLUMETRIC_EXPANSION, PROOF_PRESSURE, true", "VOLUMETRIC_EXPANSION, VOLUMETRIC_EXPANSION, true",
            "EXTERNAL_VISUAL, EXTERNAL_VISUAL, true", "EXTERNAL_VISUAL, VOLUMETRIC_EXPANSION, true"})
    void whatFailedATestOfTheWholeIsNotClearedByALook(@Nullable Method rejectedBy, Method passedBy, boolean cleared) {
        var said = today(rejectedThenPassed(rejectedBy, passedBy));
        assertThat(said.status() == Status.REJECTED).isEqualTo(!cleared);
        assertThat(may(said)).isEqualTo(cleared ? "FCU" : "---");
    }

    @Test
    void damageGoesBeforeAGoodDate() {
        var leaks = today(testedInMay2025(new Condition(List.of("LEAK"), null, false, false, null, null)));
        assertThat(may(leaks)).isEqualTo("---");
        assertThat(whyNotFill(leaks)).contains(ReasonCode.DAMAGED);
        assertThat(may(today(testedInMay2025(Condition.SOUND)))).isEqualTo("FCU");
    }

    @Test
    void fivePercentOfTheTare() {
        assertThat(whyNotFill(today(testedInMay2025(tareLoss("5.0"))))).containsExactly(ReasonCode.TARE_LOSS);
        assertThat(may(today(testedInMay2025(tareLoss("4.99"))))).isEqualTo("FCU");
    }
}
