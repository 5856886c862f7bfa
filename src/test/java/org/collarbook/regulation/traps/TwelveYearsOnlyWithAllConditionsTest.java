package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.today;
import static org.collarbook.regulation.traps.Asked.undetermined;

import org.collarbook.regulation.Lading;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Service;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Twelve years ask for a coating, one non-corrosive gas alone and a 4B, 4BA, 4BW or 4E; else five: 49 CFR 180.209(e). */
@Trap(of = Catalogue.US, number = 1)
class TwelveYearsOnlyWithAllConditionsTest {

    @ParameterizedTest
    @ValueSource(strings = {"DOT-4B240", "DOT-4BA240", "DOT-4BW240", "DOT-4E240"})
    void allMet(String stamp) {
        assertThat(due(today(cylinder(stamp, "2014-11")))).isEqualTo("2026-11");
        assertThat(may(today(cylinder(stamp, "2014-11")))).isEqualTo("FCU");
    }

    @Test
    void withOneFailingItIsFive() {
        assertThat(due(today(cylinder("DOT-4BA240", "2014-11").coated(false)))).isEqualTo("2019-11");
        assertThat(due(today(cylinder("DOT-4BA240", "2014-11").service(new Service(Lading.LPG, false, true)))))
                .isEqualTo("2019-11");
        assertThat(due(today(cylinder("DOT-4BA240", "2014-11").service(new Service(Lading.LPG, true, false)))))
                .isEqualTo("2019-11");
        assertThat(due(today(cylinder("DOT-4B240ET", "2014-11")))).isEqualTo("2019-11");
        assertThat(may(today(cylinder("DOT-4BA240", "2014-11").coated(false)))).isEqualTo("---");
    }

    @Test
    void whatIsNotKnownIsAskedFor() {
        var uncoated = today(cylinder("DOT-4BA240", "2024-11").coated(null));
        assertThat(undetermined(uncoated)).containsExactly(ReasonCode.MISSING_COATED);
        assertThat(may(uncoated)).isEqualTo("---");
        var unserved = today(cylinder("DOT-4BA240", "2024-11").service(Service.UNKNOWN));
        assertThat(undetermined(unserved)).contains(ReasonCode.MISSING_LADING, ReasonCode.MISSING_EXCLUSIVE);
        assertThat(may(unserved)).isEqualTo("---");
    }
}
