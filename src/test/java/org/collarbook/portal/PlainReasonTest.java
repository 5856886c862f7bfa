package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;

import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Permission;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.StandingHold;
import org.collarbook.regulation.Status;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.api.Test;

/** What a customer reads: whole sentences, without the words of the yard and the codes of the register. */
class PlainReasonTest {

    private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

    private static Assessment told(ReasonCode code) {
        var no = Permission.unless(List.of(Reason.of(code)));
        return new Assessment(DAY, Status.ON_HOLD, no, no, no, no, List.of(), List.of(
                new Reason(code, "what the staff wrote: ask Mr Holt of the other customer", null)));
    }

    @ParameterizedTest
    @EnumSource
    void isASentenceOfOurs(ReasonCode code) {
        for (var reason : PlainReason.of(told(code),
                List.of(new StandingHold("DENTED", null, "It is dented.", null)))) {
            assertThat(reason.text()).matches("[A-Z][^_]*\\.").doesNotContain("Holt").doesNotContain("A hold stands")
                    .doesNotContain("register applies");
            assertThat(reason.text().replaceAll("RIN|NQT|B:C|SA|LP|CYLINDER", "")).doesNotContainPattern("[A-Z]{3,}");
        }
    }

    @ParameterizedTest
    @EnumSource
    void everyWordIsExplained(Status status) {
        assertThat(PlainReason.meaning(status)).matches("[A-Z][^A-Z_]*\\.");
    }

    @Test
    void whyATankWasStoppedStaysWithTheStaff() {
        var reasons = PlainReason.of(told(ReasonCode.ON_HOLD), List.of(
                new StandingHold("OUT_OF_SERVICE", DAY.minusDays(3), "Out of service since then: quarrel over the bill",
                        null),
                new StandingHold("LEAKING", DAY, "It leaks.", null),
                new StandingHold("DENTED", DAY.plusDays(1), "It is dented.", null)));
        assertThat(reasons).extracting(PlainReason::text)
                .containsExactly("It was taken out of service on 2026-11-22.", "It leaks.");
    }
}
