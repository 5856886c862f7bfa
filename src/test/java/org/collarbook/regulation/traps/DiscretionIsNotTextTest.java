package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.on;
import static org.collarbook.regulation.traps.Asked.values;

import java.util.Set;
import org.collarbook.regulation.Policy;
import org.junit.jupiter.api.Test;

/** The notice of March 2017 tolerated twelve years while the text said ten: discretion, asked for by name (trade press). */
@Trap(of = Catalogue.US, number = 18)
class DiscretionIsNotTextTest {

    @Test
    void theTextSaysTenUnlessThePolicyIsAskedFor() {
        var made2008 = cylinder("DOT-4BA240", "2008-05");
        assertThat(due(on("2018-06-01", made2008))).isEqualTo("2018-05");
        assertThat(may(on("2018-06-01", made2008))).isEqualTo("---");
        var tolerated = made2008.policies(Set.of(Policy.DISCRETION_2017));
        assertThat(due(on("2018-06-01", tolerated))).isEqualTo("2020-05");
        assertThat(may(on("2018-06-01", tolerated))).isEqualTo("FCU");
    }

    @Test
    void itEndsWithTheTextThatItSoftened() {
        var made2008 = cylinder("DOT-4BA240", "2008-05").policies(Set.of(Policy.DISCRETION_2017));
        assertThat(due(on("2017-03-30", made2008))).as("before the notice").isEqualTo("2018-05");
        assertThat(may(on("2020-11-30", made2008))).isEqualTo("---");
    }

    @Test
    void noPolicyIsOnByDefault() {
        assertThat(values().filter(value -> value.policy() != null)).isNotEmpty().noneMatch(
                value -> value.onByDefault());
    }
}
