package org.collarbook.bench;

import java.util.List;

import org.collarbook.compliance.AsKnown;
import org.collarbook.compliance.AsKnown.Asked;
import org.collarbook.compliance.RandomFleet;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.context.annotation.Import;

/** How many containers are replayed in a second, many at once beside one by one. {@code mvn -Pbench test -Dtest=ReplayBenchmark} */
@Tag("bench")
@RegisterTest
@Import(RandomFleet.class)
class ReplayBenchmark {

    private static final int CONTAINERS = 400;
    private static final int ROUNDS = 20;

    private final RandomFleet fleet;
    private final AsKnown asKnown;
    private final TestClock clock;

    ReplayBenchmark(RandomFleet fleet, AsKnown asKnown, TestClock clock) {
        this.fleet = fleet;
        this.asKnown = asKnown;
        this.clock = clock;
    }

    @Test
    void manyBesideOne() {
        var asked = fleet.of(CONTAINERS, 7).stream().map(id -> new Asked(id, TestClock.TODAY)).toList();
        singly(asked);
        long one = singly(asked);
        asKnown.each(asked, clock.instant());
        long started = System.nanoTime();
        for (int i = 0; i < ROUNDS; i++) {
            asKnown.each(asked, clock.instant());
        }
        long many = System.nanoTime() - started;
        Figures.print("replay: %,.0f containers a second, assessed; read one by one %,.0f",
                Figures.perSecond((long) CONTAINERS * ROUNDS, many), Figures.perSecond(CONTAINERS, one));
    }

    private long singly(List<Asked> asked) {
        long started = System.nanoTime();
        asked.forEach(one -> asKnown.container(one.container(), one.day(), clock.instant()));
        return System.nanoTime() - started;
    }
}
