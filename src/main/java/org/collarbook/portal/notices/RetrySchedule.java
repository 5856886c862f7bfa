package org.collarbook.portal.notices;

import java.time.Duration;
import java.util.List;
import java.util.random.RandomGenerator;

import org.jspecify.annotations.Nullable;

/**
 * When a notice is sent again: the example schedule of Standard Webhooks 1.0.0 ("Deliverability and reliability"), ten
 * attempts over three days, each delay longer by up to a quarter so that endpoints that failed together are not tried
 * together.
 */
final class RetrySchedule {

    private static final List<Duration> DELAYS = List.of(Duration.ofSeconds(5), Duration.ofMinutes(5),
            Duration.ofMinutes(30), Duration.ofHours(2), Duration.ofHours(5), Duration.ofHours(10),
            Duration.ofHours(14), Duration.ofHours(20), Duration.ofHours(24));
    static final int ATTEMPTS = DELAYS.size() + 1;
    private static final double JITTER = 0.25;
    private static final Duration LONGEST_REST = Duration.ofMinutes(10);

    private final RandomGenerator random;

    RetrySchedule(RandomGenerator random) {
        this.random = random;
    }

    /** After so many attempts; null when it is given up. */
    @Nullable
    Duration after(int attempts) {
        return attempts >= ATTEMPTS ? null : jittered(DELAYS.get(attempts - 1));
    }

    /** How long an endpoint rests after so many failures in a row, whatever else waits for it. */
    Duration rest(int failures) {
        var rest = Duration.ofSeconds(5L << Math.min(failures - 1, 10));
        return jittered(rest.compareTo(LONGEST_REST) < 0 ? rest : LONGEST_REST);
    }

    private Duration jittered(Duration delay) {
        return delay.plusMillis((long) (delay.toMillis() * JITTER * random.nextDouble()));
    }
}
