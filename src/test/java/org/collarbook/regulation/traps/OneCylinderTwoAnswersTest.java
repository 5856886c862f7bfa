package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;

import org.collarbook.regulation.Clock;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Status;
import org.junit.jupiter.api.Test;

/** A DOT cylinder has twelve years in the US and ten in Canada, whatever is printed on it (knowalberta.com). */
@Trap(of = Catalogue.WORLD, number = 5)
class OneCylinderTwoAnswersTest {

    @Test
    void twelveThereAndTenHere() {
        var american = today(cylinder("DOT-4BA240", "2015-03"));
        assertThat(due(american)).isEqualTo("2027-03");
        assertThat(may(american)).isEqualTo("FCU");
        var canadian = today(there("CA", cylinder("DOT-4BA240", "2015-03")));
        assertThat(canadian.requirements()).filteredOn(clock -> new Jurisdiction("CA").equals(clock.jurisdiction()))
                .extracting(Clock::outcome).hasToString("[Due[month=2025-03]]");
        assertThat(canadian.requirements()).filteredOn(clock -> Jurisdiction.US.equals(clock.jurisdiction()))
                .extracting(Clock::outcome).hasToString("[Due[month=2027-03]]");
        assertThat(canadian.status()).as("both count, the worse decides").isEqualTo(Status.OVERDUE);
        assertThat(may(canadian)).isEqualTo("---");
    }

    /** The Canadian number is second-hand, so unasked nothing but the American date is told, and nothing is allowed. */
    @Test
    void theTwelveYearsAreNoAnswerInCanada() {
        var unasked = today(cylinder("DOT-4BA240", "2015-03").jurisdiction(new Jurisdiction("CA")));
        assertThat(unasked.status()).isEqualTo(Status.UNDETERMINED);
        assertThat(unasked.requirements()).anyMatch(clock -> clock.outcome() instanceof Outcome.Undetermined);
        assertThat(may(unasked)).isEqualTo("---");
    }
}
