package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.on;

import org.collarbook.regulation.Method;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Metal bears no day: good through the month's last, overdue on the next first, 49 CFR 180.205(c), 180.213(d). */
@Trap(of = Catalogue.US, number = 6)
class MonthsHaveNoDayTest {

    @ParameterizedTest
    @CsvSource({"2014-11,2026-11-30,FCU", "2014-11,2026-12-01,---", "2012-02,2024-02-29,FCU", "2012-02,2024-03-01,---",
            "2014-12,2026-12-31,FCU", "2014-12,2027-01-01,---"})
    void untilTheLastDayOfTheMonth(String made, String day, String may) {
        assertThat(may(on(day, cylinder("DOT-4BA240", made)))).isEqualTo(may);
    }

    /** "during or before the month": one tested in its due month, or the month before, counts from that month. */
    @Test
    void itMayBeTestedInTheDueMonthOrBefore() {
        var inTheMonth = marked(cylinder("DOT-4BA240", "2014-11"), "2026-11", Method.VOLUMETRIC_EXPANSION);
        assertThat(due(on("2026-12-01", inTheMonth))).isEqualTo("2038-11");
        assertThat(may(on("2026-12-01", inTheMonth))).isEqualTo("FCU");
        var before = marked(cylinder("DOT-4BA240", "2014-11"), "2026-10", Method.VOLUMETRIC_EXPANSION);
        assertThat(due(on("2026-12-01", before))).isEqualTo("2038-10");
    }
}
