package org.collarbook.access;

import java.time.Duration;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

import org.springframework.stereotype.Component;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;

/**
 * How much each caller may ask in a minute, by the most generous of its roles; 0 is without a limit. Kept in memory, so
 * each instance of the service counts by itself; there is one bucket for each key in use.
 */
@Component
class Rates {

    static final Duration WINDOW = Duration.ofMinutes(1);

    private final AccessSettings settings;
    private final Map<UUID, Bucket> buckets = new ConcurrentHashMap<>();

    Rates(AccessSettings settings) {
        this.settings = settings;
    }

    long perMinute(Caller caller) {
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

    ConsumptionProbe take(Caller caller, long perMinute) {
        return buckets.computeIfAbsent(caller.id(), id -> Bucket.builder().addLimit(limit -> limit.capacity(perMinute)
                .refillGreedy(perMinute, WINDOW)).build()).tryConsumeAndReturnRemaining(1);
    }
}
