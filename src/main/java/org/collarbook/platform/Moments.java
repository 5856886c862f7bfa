package org.collarbook.platform;

import java.time.Duration;
import java.time.Instant;

import org.jspecify.annotations.Nullable;

/** When something happened, as told by whoever records it. */
public final class Moments {

    /** A scanner's clock may run ahead by so much. */
    private static final Duration AHEAD = Duration.ofMinutes(5);
    private static final Instant EARLIEST = Instant.parse("1940-01-01T00:00:00Z");

    private Moments() {}

    /** What was given; missing, ahead of now and long ago are refused. */
    public static @Nullable Instant past(String pointer, @Nullable Instant given, Instant now, Inputs inputs) {
        var at = inputs.present(pointer, given, "when it happened, such as 2026-11-25T14:30:00Z");
        if (at != null) {
            refuseImpossible(pointer, at, now, inputs);
        }
        return at;
    }

    /** The same where it is now when absent; never later than that. */
    public static Instant pastOrNow(String pointer, @Nullable Instant given, Instant now, Inputs inputs) {
        if (given == null) {
            return now;
        }
        refuseImpossible(pointer, given, now, inputs);
        return given.isAfter(now) ? now : given;
    }

    private static void refuseImpossible(String pointer, Instant at, Instant now, Inputs inputs) {
        if (at.isAfter(now.plus(AHEAD))) {
            inputs.refuse(pointer, "IN_THE_FUTURE", at.toString(), "not after now, " + now);
        } else if (at.isBefore(EARLIEST)) {
            inputs.refuse(pointer, "OUT_OF_RANGE", at.toString(), "not before " + EARLIEST);
        }
    }
}
