package org.collarbook.schedule;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;

import org.collarbook.platform.Inputs;
import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.Parameter;

/** Of which day and of whose knowledge the schedule is to be, as query parameters; absent is today and now. */
record ReplayQuestion(
        @Parameter(description = "the day whose schedule is asked for, as YYYY-MM-DD; absent is today at each site") @Nullable String asOf,
        @Parameter(description = "the moment of whose knowledge it is to be, such as 2026-11-25T14:00:00Z; absent is now") @Nullable String knownAt) {

    private static final LocalDate FIRST = LocalDate.of(1900, 1, 1);
    private static final LocalDate LAST = LocalDate.of(2199, 12, 31);

    /** Null where neither is told, so that what is stored answers. */
    @Nullable
    Replay read(Instant now, Inputs wrong) {
        var day = day(wrong);
        var moment = moment(now, wrong);
        return day == null && moment == null ? null : new Replay(day, moment == null ? now : moment);
    }

    private @Nullable LocalDate day(Inputs wrong) {
        if (asOf == null || asOf.isBlank()) {
            return null;
        }
        try {
            var day = LocalDate.parse(asOf.strip());
            if (!day.isBefore(FIRST) && !day.isAfter(LAST)) {
                return day;
            }
        } catch (DateTimeException unreadable) {
            // told below, with what is accepted
        }
        wrong.refuse("asOf", "INVALID_DATE", asOf, "a day as YYYY-MM-DD, from " + FIRST + " to " + LAST);
        return null;
    }

    private @Nullable Instant moment(Instant now, Inputs wrong) {
        if (knownAt == null || knownAt.isBlank()) {
            return null;
        }
        try {
            var moment = WrittenTime.moment(knownAt.strip());
            if (!moment.isAfter(now)) {
                return moment;
            }
            wrong.refuse("knownAt", "IN_THE_FUTURE", knownAt, "a moment that has passed");
        } catch (DateTimeException unreadable) {
            wrong.refuse("knownAt", "INVALID_TIME", knownAt, "a moment such as 2026-11-25T14:00:00Z");
        }
        return null;
    }
}
