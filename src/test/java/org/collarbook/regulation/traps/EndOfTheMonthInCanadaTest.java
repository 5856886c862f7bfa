package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.on;
import static org.collarbook.regulation.traps.Asked.there;

import org.collarbook.regulation.Status;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A Canadian stamp is good through the end of its month; no day is computed (knowalberta.com, second-hand). */
@Trap(of = Catalogue.WORLD, number = 3)
class EndOfTheMonthInCanadaTest {

    @ParameterizedTest
    @CsvSource({"2016-02,2026-02-28,DUE_THIS_MONTH", "2016-02,2026-03-01,OVERDUE", "2014-02,2024-02-29,DUE_THIS_MONTH",
            "2014-02,2024-03-01,OVERDUE", "2015-07,2025-07-31,DUE_THIS_MONTH", "2015-07,2025-08-01,OVERDUE"})
    void throughTheLastDay(String made, String day, Status status) {
        var assessment = on(day, there("CA", cylinder("TC-4BWM17", made)));
        assertThat(due(assessment)).isEqualTo(day.startsWith("2024")
                ? "2024-02"
                : made.endsWith("07") ? "2025-07" : "2026-02");
        assertThat(assessment.status()).isEqualTo(status);
        assertThat(assessment.mayUse().allowed()).isEqualTo(status == Status.DUE_THIS_MONTH);
        assertThat(assessment.mayFill().allowed()).as("CSA B340 is not held").isFalse();
    }
}
