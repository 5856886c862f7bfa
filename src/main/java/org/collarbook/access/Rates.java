package org.collarbook.access;

import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.TimeUnit;

import org.collarbook.platform.Problem;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;

import io.github.bucket4j.TimeMeter;
import jakarta.servlet.http.HttpServletResponse;

/**
 * How much each caller may ask in a minute, by the most generous of its roles; 0 is without a limit. Kept in memory, so
 * each instance of the service counts by itself; there is one bucket for each key and each calendar in use.
 */
@Component
public class Rates {

    private static final int MOST = 100_000;

    private final AccessSettings settings;
    private final Buckets<UUID> buckets = new Buckets<>(MOST, TimeMeter.SYSTEM_MILLISECONDS);

    Rates(AccessSettings settings) {
        this.settings = settings;
    }

    private long perMinute(Caller caller) {
        var limits = caller.roles().stream().mapToLong(role -> settings.requestsPerMinute().getOrDefault(role, 0L))
                .toArray();
        long most = 0;
        for (long limit : limits) {
            if (limit == 0) {
                return 0;
            }
            most = Math.max(most, limit);
        }
        return limits.length == 0 ? settings.requestsPerMinute().getOrDefault(Role.PORTAL, 0L) : most;
    }

    /** One more request with the key of the caller; the refusal where it is one too many. */
    Optional<Problem> take(Caller caller, HttpServletResponse response) {
        return take(caller.id(), "key", perMinute(caller), response);
    }

    /** One more reading of a calendar that exists, by the token in its address; refused by problem where it is one too many. */
    public void takeForCalendar(UUID feed, HttpServletResponse response) {
        take(feed, "calendar", settings.calendarReadsPerMinute(), response).ifPresent(refusal -> {
            throw refusal.asException();
        });
    }

    /** Tells what is left in the headers of draft-ietf-httpapi-ratelimit-headers-10. */
    private Optional<Problem> take(UUID who, String noun, long perMinute, HttpServletResponse response) {
        if (perMinute == 0) {
            return Optional.empty();
        }
        var left = buckets.of(who, perMinute).tryConsumeAndReturnRemaining(1);
        response.setHeader("RateLimit-Policy", "\"" + noun + "\";q=" + perMinute + ";w=" + Buckets.WINDOW.toSeconds());
        response.setHeader("RateLimit", "\"" + noun + "\";r=" + left.getRemainingTokens() + ";t="
                + seconds(left.getNanosToWaitForReset()));
        if (left.isConsumed()) {
            return Optional.empty();
        }
        response.setHeader(HttpHeaders.RETRY_AFTER, String.valueOf(seconds(left.getNanosToWaitForRefill())));
        return Optional.of(Problem.of(HttpStatus.TOO_MANY_REQUESTS, "TOO_MANY_REQUESTS", "More than " + perMinute
                + " requests a minute with this " + noun + ": come again after Retry-After seconds."));
    }

    /** Rounded up, and never 0: a second early is refused again. */
    static long seconds(long nanos) {
        return Math.max(1, TimeUnit.NANOSECONDS.toSeconds(nanos + TimeUnit.SECONDS.toNanos(1) - 1));
    }
}
