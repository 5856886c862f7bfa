package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.today;

import org.collarbook.regulation.Method;
import org.junit.jupiter.api.Test;

/** Counted from the new mark, never from the old due date, so an early E shortens the date: 49 CFR 180.209(g). */
@Trap(of = Catalogue.US, number = 3)
class AnEarlyVisualShortensTest {

    @Test
    void anEarlyVisualTakesYearsAway() {
        assertThat(due(today(cylinder("DOT-4BA240", "2020-01")))).isEqualTo("2032-01");
        assertThat(may(today(cylinder("DOT-4BA240", "2020-01")))).isEqualTo("FCU");
        var looked = today(marked(cylinder("DOT-4BA240", "2020-01"), "2021-10", Method.EXTERNAL_VISUAL));
        assertThat(due(looked)).isEqualTo("2026-10");
        assertThat(may(looked)).isEqualTo("---");
    }

    @Test
    void aLateMarkIsNotDatedBackToWhenItWasDue() {
        var late = today(marked(cylinder("DOT-4BA240", "2004-05"), "2023-06", Method.VOLUMETRIC_EXPANSION));
        assertThat(due(late)).as("due 2016-05, tested 2023-06").isEqualTo("2035-06");
        assertThat(may(late)).isEqualTo("FCU");
    }

    @Test
    void anEarlyTestDoesNotKeepTheOldDate() {
        assertThat(due(today(marked(cylinder("DOT-4BA240", "2015-06"), "2022-04", Method.EXTERNAL_VISUAL))))
                .isEqualTo("2027-04");
        assertThat(due(today(marked(cylinder("DOT-4BA240", "2015-06"), "2022-04", Method.VOLUMETRIC_EXPANSION))))
                .isEqualTo("2034-04");
    }
}
