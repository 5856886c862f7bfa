package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.on;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;

import java.util.List;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requirement;
import org.junit.jupiter.api.Test;

/**
 * Early or late, the newest test restarts the clock (knowalberta.com); but the test between two periodic ones of a
 * portable tank does not move the five years, 49 CFR 180.605(c)(1).
 */
@Trap(of = Catalogue.WORLD, number = 4)
class TheClockRestartsAtTheLatestMarkTest {

    @Test
    void earlyOrLate() {
        assertThat(due(today(marked(there("CA", cylinder("TC-4BAM17", "2012-05")), "2021-12")))).isEqualTo("2031-12");
        assertThat(due(today(marked(there("CA", cylinder("TC-4BAM17", "2010-01")), "2023-06")))).isEqualTo("2033-06");
    }

    private static FactsBuilder portable(Method second) {
        return cylinder("UN T50", "2019-05").kind(ContainerKind.PORTABLE_TANK)
                .requalifications(List.of(Cases.mark("2024-05", Method.PERIODIC), Cases.mark("2026-08", second)));
    }

    @Test
    void theIntermediateTestDoesNotMoveThePeriodicOne() {
        var looked = on("2029-06-01", portable(Method.INTERMEDIATE));
        assertThat(due(looked, Requirement.PERIODIC_TEST)).isEqualTo("2029-05");
        assertThat(due(looked, Requirement.INTERMEDIATE_TEST)).isEqualTo("NOT_REQUIRED");
        assertThat(looked.mayCarry().allowed()).isFalse();
        assertThat(on("2029-05-31", portable(Method.INTERMEDIATE)).mayCarry().allowed()).isTrue();
        assertThat(due(today(portable(Method.PERIODIC)), Requirement.PERIODIC_TEST)).isEqualTo("2031-08");
    }
}
