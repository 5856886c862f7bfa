package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.on;
import static org.collarbook.regulation.traps.Asked.today;

import org.collarbook.regulation.Method;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Status;
import org.junit.jupiter.api.Test;

/**
 * "10 years after expiration of the initial 12-year period" could be read as 22 from manufacture; an early S counts from
 * itself and is told: 49 CFR 180.209(e) as two public notes of October 2026 quote it.
 */
@Trap(of = Catalogue.US, number = 4)
class AnEarlyProofTestIsNotStretchedTest {

    @Test
    void tenYearsFromItsOwnMonthAndTold() {
        var early = marked(cylinder("DOT-4BA240", "2015-06"), "2016-10", Method.PROOF_PRESSURE);
        assertThat(due(today(early))).as("not 2037-06").isEqualTo("2026-10");
        assertThat(today(early).gives(ReasonCode.EARLY_PROOF_TEST)).isTrue();
        assertThat(today(early).status()).isEqualTo(Status.OVERDUE);
        assertThat(on("2026-10-31", early).mayFill().allowed()).isTrue();
    }

    @Test
    void onceTwelveYearsAreOverNothingIsInDoubt() {
        assertThat(today(marked(cylinder("DOT-4BA240", "2010-11"), "2022-10", Method.PROOF_PRESSURE))
                .gives(ReasonCode.EARLY_PROOF_TEST)).isTrue();
        var inTime = today(marked(cylinder("DOT-4BA240", "2010-11"), "2022-11", Method.PROOF_PRESSURE));
        assertThat(inTime.gives(ReasonCode.EARLY_PROOF_TEST)).isFalse();
        assertThat(due(inTime)).isEqualTo("2032-11");
    }
}
