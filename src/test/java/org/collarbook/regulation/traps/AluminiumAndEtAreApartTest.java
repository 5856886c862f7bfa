package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.notHeld;
import static org.collarbook.regulation.traps.Asked.today;
import static org.collarbook.regulation.traps.Asked.undetermined;
import static org.collarbook.regulation.traps.Asked.whyNotFill;

import java.util.List;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Status;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Fire ends a 4E (NFPA 58 annex C.3.2.2), which has an expansion limit of its own; 3AL and 4B240ET have neither the
 * visual inspection nor the twelve years: 49 CFR 180.205, 180.209(e), (g).
 */
@Trap(of = Catalogue.US, number = 10)
class AluminiumAndEtAreApartTest {

    private static final Condition BURNT = new Condition(List.of(), null, false, true, null, null);

    @Test
    void fireEndsA4EAndCallsForATestOfASteelOne() {
        var aluminium = today(cylinder("DOT-4E240", "2018-09").condition(BURNT));
        assertThat(aluminium.status()).isEqualTo(Status.CONDEMNED);
        assertThat(may(aluminium)).isEqualTo("---");
        var steel = today(cylinder("DOT-4BA240", "2018-09").condition(BURNT));
        assertThat(steel.status()).isEqualTo(Status.IN_DATE);
        assertThat(whyNotFill(steel)).containsExactly(ReasonCode.FIRE_EXPOSED);
        assertThat(may(today(cylinder("DOT-4E240", "2018-09")))).isEqualTo("FCU");
    }

    @ParameterizedTest
    @ValueSource(strings = {"DOT-3AL1800", "DOT-4B240ET"})
    void fiveYearsAndNoVisual(String stamp) {
        assertThat(due(today(cylinder(stamp, "2019-04")))).isEqualTo("2024-04");
        assertThat(undetermined(today(marked(cylinder(stamp, "2019-04"), "2024-04", Method.EXTERNAL_VISUAL))))
                .containsExactly(ReasonCode.METHOD_NOT_ACCEPTED);
        assertThat(may(today(marked(cylinder(stamp, "2019-04"), "2024-04", Method.EXTERNAL_VISUAL)))).isEqualTo("---");
        assertThat(due(today(marked(cylinder(stamp, "2019-04"), "2024-04", Method.VOLUMETRIC_EXPANSION))))
                .isEqualTo("2029-04");
    }

    /** Over 12 % for a 4E, over 10 % for the others: the requalifier's measure, of which the result is recorded. */
    @Test
    void theExpansionIsTheRequalifiersToJudge() {
        assertThat(notHeld("US", "180.205", "12 %")).isTrue();
    }
}
