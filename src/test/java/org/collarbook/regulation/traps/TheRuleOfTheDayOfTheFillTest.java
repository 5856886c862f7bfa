package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.on;
import static org.collarbook.regulation.traps.Asked.today;

import java.time.LocalDate;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ReasonCode;
import org.junit.jupiter.api.Test;

/**
 * The rule of the day asked about governs and not that of the day of marking: ten-year marks of 2017 to 2020 are good
 * for twelve today; HM-219B, 85 FR 68790, effective 2020-11-30.
 */
@Trap(of = Catalogue.US, number = 5)
class TheRuleOfTheDayOfTheFillTest {

    @Test
    void aMarkOfTheTenYearsIsTwelveToday() {
        var marked = marked(cylinder("DOT-4BA240", "2000-05"), "2018-05", Method.VOLUMETRIC_EXPANSION);
        assertThat(due(on("2020-11-29", marked))).isEqualTo("2028-05");
        assertThat(due(on("2020-11-30", marked))).isEqualTo("2030-05");
        assertThat(may(on("2030-05-31", marked))).isEqualTo("FCU");
    }

    /** Of May 2008, never tested: ten years were over in May 2018, twelve in May 2020. */
    @Test
    void theFillIsJudgedByTheRuleOfItsOwnDay() {
        var filledInTime = today(cylinder("DOT-4BA240", "2008-05").filledOn(LocalDate.of(2018, 5, 31)));
        assertThat(due(filledInTime)).isEqualTo("2020-05");
        assertThat(may(filledInTime)).isEqualTo("-CU");
        var filledLate = today(cylinder("DOT-4BA240", "2008-05").filledOn(LocalDate.of(2018, 6, 1)));
        assertThat(due(filledLate)).isEqualTo("2020-05");
        assertThat(may(filledLate)).as("twelve years came back after the fill").isEqualTo("---");
        assertThat(filledLate.mayUse().refusedFor(ReasonCode.FILLED_WHILE_OVERDUE)).isTrue();
    }
}
