package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.today;
import static org.collarbook.regulation.traps.Asked.undetermined;
import static org.collarbook.regulation.traps.Asked.whyNotFill;

import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Status;
import org.junit.jupiter.api.Test;

/** Only the owner fills it, or with consent, 173.301(e); with no legible marks no date can be told, 173.301(b). */
@Trap(of = Catalogue.US, number = 13)
class ConsentAndLegibleMarksTest {

    @Test
    void theOwnerConsentsOrNobodyFills() {
        assertThat(may(today(cylinder("DOT-4BA240", "2020-01").ownerConsent(true)))).isEqualTo("FCU");
        var refused = today(cylinder("DOT-4BA240", "2020-01").ownerConsent(false));
        assertThat(whyNotFill(refused)).containsExactly(ReasonCode.OWNER_CONSENT_REFUSED);
        assertThat(may(refused)).as("consent is for filling").isEqualTo("-CU");
        assertThat(whyNotFill(today(cylinder("DOT-4BA240", "2020-01").ownerConsent(null))))
                .containsExactly(ReasonCode.MISSING_OWNER_CONSENT);
    }

    @Test
    void whatCannotBeReadIsNotGuessed() {
        var nameless = today(cylinder("DOT-4BA240", "2020-01").manufactured(null));
        assertThat(nameless.status()).isEqualTo(Status.UNDETERMINED);
        assertThat(undetermined(nameless)).containsExactly(ReasonCode.MISSING_MANUFACTURED);
        assertThat(may(nameless)).isEqualTo("---");
    }

    @Test
    void illegibleMarksBarTheFillAlsoInDate() {
        assertThat(whyNotFill(today(cylinder("DOT-4BA240", "2020-01").marksLegible(false))))
                .containsExactly(ReasonCode.MARKS_NOT_LEGIBLE);
        assertThat(whyNotFill(today(cylinder("DOT-4BA240", "2020-01").marksLegible(null))))
                .containsExactly(ReasonCode.MISSING_MARKS_LEGIBLE);
    }
}
