package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.today;
import static org.collarbook.regulation.traps.Asked.whyNotFill;

import java.time.LocalDate;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Status;
import org.junit.jupiter.api.Test;

/** Filled before it fell due it is used up and carried, never topped off: 49 CFR 180.205(c), PHMSA letter 09-0148. */
@Trap(of = Catalogue.US, number = 7)
class NoToppingOffTest {

    private static FactsBuilder dueInMay2021(String filledOn) {
        return marked(cylinder("DOT-4BA240", "2004-05"), "2016-05", Method.EXTERNAL_VISUAL)
                .filledOn(LocalDate.parse(filledOn));
    }

    @Test
    void itTakesNoMoreGas() {
        var partlyFull = today(dueInMay2021("2021-05-31"));
        assertThat(partlyFull.status()).isEqualTo(Status.USE_UP);
        assertThat(may(partlyFull)).isEqualTo("-CU");
        assertThat(whyNotFill(partlyFull)).containsExactly(ReasonCode.OVERDUE);
    }

    @Test
    void filledTheDayAfterItIsNotUsedUp() {
        assertThat(may(today(dueInMay2021("2021-06-01")))).isEqualTo("---");
        assertThat(today(dueInMay2021("2021-06-01")).mayCarry().refusedFor(ReasonCode.FILLED_WHILE_OVERDUE)).isTrue();
    }

    @Test
    void onceEmptiedItIsOverdueAndGoesEmpty() {
        var emptied = today(dueInMay2021("2021-05-31").emptiedOn(LocalDate.of(2022, 1, 1)));
        assertThat(may(emptied)).isEqualTo("---");
        assertThat(emptied.mayCarryEmpty().allowed()).isTrue();
        assertThat(today(dueInMay2021("2021-05-31")).mayCarryEmpty().allowed()).isFalse();
    }
}
