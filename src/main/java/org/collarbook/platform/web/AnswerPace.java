package org.collarbook.platform.web;

import java.time.Duration;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.util.unit.DataSize;

/** How long a reader may keep an answer waiting: so long, and longer by what it has taken at the least pace. */
@ConfigurationProperties("collarbook.answers")
record AnswerPace(Duration patience, DataSize perSecond) {

    boolean isTooSlow(long waitedNanos, long written) {
        return waitedNanos > patience.toNanos() + (long) (1e9 * written / perSecond.toBytes());
    }
}
