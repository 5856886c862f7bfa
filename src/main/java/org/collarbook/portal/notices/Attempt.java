package org.collarbook.portal.notices;

import java.time.Duration;

import org.jspecify.annotations.Nullable;

/**
 * What came of sending a notice once; of the answer its status is kept, and never its body. {@code comeAgain}: not before,
 * as an endpoint that is too busy says.
 */
record Attempt(Outcome outcome, @Nullable Integer httpStatus, int tookMs, @Nullable String error,
        @Nullable Duration comeAgain) {

    enum Outcome {
        /** Answered 2xx. */
        DELIVERED,
        /** Another answer, a redirect among them. */
        ANSWERED_OTHERWISE,
        /** 410: the endpoint wants no more. */
        GONE,
        TIMED_OUT,
        NOT_REACHED,
        ADDRESS_REFUSED
    }

    static Outcome of(int httpStatus) {
        return httpStatus >= 200 && httpStatus < 300
                ? Outcome.DELIVERED
                : httpStatus == 410 ? Outcome.GONE : Outcome.ANSWERED_OTHERWISE;
    }
}
