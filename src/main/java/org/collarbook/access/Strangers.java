package org.collarbook.access;

import java.time.Duration;

import org.springframework.stereotype.Component;

import io.github.bucket4j.Bucket;

/** How many requests without a valid key are noted one by one: whoever has no key shall not fill the database. */
@Component
class Strangers {

    private final Bucket lines;

    Strangers(AccessSettings settings) {
        lines = Bucket.builder().addLimit(limit -> limit.capacity(settings.strangersNotedPerMinute())
                .refillGreedy(settings.strangersNotedPerMinute(), Duration.ofMinutes(1))).build();
    }

    boolean mayBeNoted() {
        return lines.tryConsume(1);
    }
}
