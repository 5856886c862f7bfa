package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;

import java.time.YearMonth;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Status;
import org.junit.jupiter.api.Test;

/** The date of a competent person's written scheme beats any that is computed: PSSR 2000, told second-hand. */
@Trap(of = Catalogue.WORLD, number = 14)
class TheWrittenSchemeGoesFirstTest {

    /** Made in 2020, so that the ten years of the code would run to 2030. */
    private static FactsBuilder tank(YearMonth schemeDue) {
        return Cases.stationary().jurisdiction(new Jurisdiction("UK")).manufactured(YearMonth.of(2020, 9))
                .schemeDue(schemeDue);
    }

    @Test
    void itsMonthIsTheDate() {
        var past = today(there("UK", tank(YearMonth.of(2026, 10))));
        assertThat(due(past, Requirement.WRITTEN_SCHEME)).isEqualTo("2026-10");
        assertThat(due(past, Requirement.TEN_YEAR_EXAMINATION)).isEqualTo("NOT_REQUIRED");
        assertThat(past.status()).isEqualTo(Status.OVERDUE);
        assertThat(may(past)).isEqualTo("---");
        var ahead = today(there("UK", tank(YearMonth.of(2026, 11))));
        assertThat(ahead.status()).isEqualTo(Status.DUE_THIS_MONTH);
        assertThat(ahead.mayUse().allowed()).isTrue();
    }

    /** The rule that says so was not read and is off until it is asked for; the ten years do not stand in for it. */
    @Test
    void aRecordedSchemeIsNeverOutdoneByTheComputedDate() {
        var unasked = today(tank(YearMonth.of(2026, 10)));
        assertThat(unasked.gives(ReasonCode.RULE_OFF)).isTrue();
        assertThat(unasked.status()).isEqualTo(Status.UNDETERMINED);
        assertThat(may(unasked)).isEqualTo("---");
    }
}
