package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.collar;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.notHeld;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;
import static org.collarbook.regulation.traps.Asked.undetermined;

import java.util.Set;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Readings;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Status;
import org.collarbook.regulation.StampedMonth;
import org.junit.jupiter.api.Test;

/**
 * ADR 6.2.3.9 lets a mark bear a year alone, India stamps quarters, and some stamp the expiry or put the month of the
 * next test on a label (BAM on ADR 5.2.1.6): such a stamp is no month of a test.
 */
@Trap(of = Catalogue.WORLD, number = 2)
class MonthMayBeAbsentTest {

    @Test
    void aYearAloneIsNoMonth() {
        assertThat(Readings.ambiguous(StampedMonth.read("2014", collar("EN 1442"))).readings()).hasSize(12);
        assertThat(StampedMonth.read("2014", collar("DOT-4BA240"))).isInstanceOf(Reading.Unreadable.class);
        assertThat(notHeld("ADR", "6.2.3.9", "no month")).isTrue();
        var yearAlone = today(there("ADR", cylinder("EN 1442", "2014-01").manufactured(null)));
        assertThat(undetermined(yearAlone)).containsExactly(ReasonCode.MISSING_MANUFACTURED);
        assertThat(may(yearAlone)).isEqualTo("---");
    }

    /** "A 14", the first quarter of 2014, is no month; and no rule of India is held. */
    @Test
    void aQuarterIsNoMonth() {
        assertThat(StampedMonth.read("A 14", collar("UN"))).isInstanceOf(Reading.Unreadable.class);
        assertThat(StampedMonth.read("A-2014", collar("UN"))).isInstanceOf(Reading.Unreadable.class);
        var india = today(cylinder("UN ISO 4706", "2024-01").jurisdiction(new Jurisdiction("IN"))
                .enable(Set.of("SECONDARY", "MEMORY")));
        assertThat(undetermined(india)).containsExactly(ReasonCode.NO_RULE_HELD);
        assertThat(india.status()).isEqualTo(Status.UNDETERMINED);
    }

    /** A month ahead of the day of reading cannot be that of a test: an expiry, or a misread stamp. */
    @Test
    void anExpiryIsNotTakenForATest() {
        assertThat(Readings.unreadable(RequalificationMark.read("29/05", collar("EN 1442"))).fault())
                .isEqualTo(Reading.Fault.IN_THE_FUTURE);
        assertThat(RequalificationMark.read("24/05", collar("EN 1442"))).isInstanceOf(Reading.Read.class);
    }
}
