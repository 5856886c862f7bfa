package org.collarbook.holds.web;

import java.time.Duration;
import java.time.Instant;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

/** A moment in a request, at which something has happened already; now when absent. */
final class Moments {

    /** A scanner's clock may run ahead by so much. */
    private static final Duration AHEAD = Duration.ofMinutes(5);
    private static final Instant EARLIEST = Instant.parse("1940-01-01T00:00:00Z");

    private Moments() {}

    static Instant read(String pointer, @Nullable Instant given, Instant now, Inputs inputs) {
        if (given == null) {
            return now;
        }
        if (given.isAfter(now.plus(AHEAD))) {
            inputs.refuse(pointer, "IN_THE_FUTURE", given.toString(), "not after now, " + now);
        } else if (given.isBefore(EARLIEST)) {
            inputs.refuse(pointer, "OUT_OF_RANGE", given.toString(), "not before " + EARLIEST);
        }
        return given.isAfter(now) ? now : given;
    }
}
