package org.collarbook.access;

import java.time.Duration;

import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

import io.github.bucket4j.Bucket;

/** How many requests without a valid key are noted one by one: whoever has no key shall not fill the database. */
@Component
class Strangers {

    /** Null is without a limit. */
    private final @Nullable Bucket lines;

    Strangers(AccessSettings settings) {
        long perMinute = settings.strangersNotedPerMinute();
        lines = perMinute == 0
                ? null
                : Bucket.builder().addLimit(limit -> limit.capacity(perMinute).refillGreedy(perMinute,
                        Duration.ofMinutes(1))).build();
    }

    boolean mayBeNoted() {
        return lines == null || lines.tryConsume(1);
    }
}
