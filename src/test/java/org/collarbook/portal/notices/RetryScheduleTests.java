package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Random;

import org.junit.jupiter.api.Test;

class RetryScheduleTests {

    /** Standard Webhooks 1.0.0, "Example retry schedule": the delays after the first, immediate attempt. */
    private static final List<Duration> EXAMPLE = List.of(Duration.ofSeconds(5), Duration.ofMinutes(5),
            Duration.ofMinutes(30), Duration.ofHours(2), Duration.ofHours(5), Duration.ofHours(10),
            Duration.ofHours(14), Duration.ofHours(20), Duration.ofHours(24));

    private final RetrySchedule schedule = new RetrySchedule(new Random(7));

    @Test
    void followsTheExampleOfTheSpecificationAndIsSpreadAboveIt() {
        boolean spread = false;
        for (int attempts = 1; attempts <= EXAMPLE.size(); attempts++) {
            var least = EXAMPLE.get(attempts - 1);
            for (int i = 0; i < 100; i++) {
                var delay = Objects.requireNonNull(schedule.after(attempts));
                assertThat(delay).isBetween(least, least.multipliedBy(5).dividedBy(4));
                spread |= delay.compareTo(least.plus(least.dividedBy(10))) > 0;
            }
        }
        assertThat(spread).isTrue();
        assertThat(schedule.after(EXAMPLE.size() + 1)).isNull();
    }

    @Test
    void anEndpointRestsLongerWithEachFailureButNotForHours() {
        assertThat(schedule.rest(1)).isBetween(Duration.ofSeconds(5), Duration.ofSeconds(7));
        assertThat(schedule.rest(4)).isBetween(Duration.ofSeconds(40), Duration.ofSeconds(50));
        assertThat(schedule.rest(1000)).isBetween(Duration.ofMinutes(10), Duration.ofSeconds(750));
    }
}
