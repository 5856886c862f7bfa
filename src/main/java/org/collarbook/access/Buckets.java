package org.collarbook.access;

import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.TimeMeter;

/**
 * So much a minute for each of many. A bucket that is full again says nothing any more and is forgotten; where more than
 * the bound are in use at once, all begin anew. Whoever comes with another limit than before has another bucket.
 */
final class Buckets<K> {

    static final Duration WINDOW = Duration.ofMinutes(1);

    private record Limited<K>(K who, long perMinute) {}

    private final int most;
    private final TimeMeter time;
    private final Map<Limited<K>, Bucket> buckets = new ConcurrentHashMap<>();
    private final AtomicLong lookedThrough;

    Buckets(int most, TimeMeter time) {
        this.most = most;
        this.time = time;
        this.lookedThrough = new AtomicLong(time.currentTimeNanos());
    }

    Bucket of(K who, long perMinute) {
        forget();
        return buckets.computeIfAbsent(new Limited<>(who, perMinute), limited -> Bucket.builder()
                .withCustomTimePrecision(time)
                .addLimit(limit -> limit.capacity(perMinute).refillGreedy(perMinute, WINDOW)).build());
    }

    int size() {
        return buckets.size();
    }

    private void forget() {
        long last = lookedThrough.get();
        long now = time.currentTimeNanos();
        boolean bound = buckets.size() >= most;
        if ((bound || now - last >= WINDOW.toNanos()) && lookedThrough.compareAndSet(last, now)) {
            buckets.entrySet().removeIf(one -> one.getValue().getAvailableTokens() >= one.getKey().perMinute);
            // else one new one after another would have all the others looked through
            if (bound && buckets.size() > most / 2) {
                buckets.clear();
            }
        }
    }
}
