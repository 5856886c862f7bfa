package org.collarbook.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;

import org.junit.jupiter.api.Test;

import io.github.bucket4j.TimeMeter;

class BucketsTests {

    /** Stands until it is moved. */
    private static final class Meter implements TimeMeter {

        private long nanos;

        @Override
        public long currentTimeNanos() {
            return nanos;
        }

        @Override
        public boolean isWallClockBased() {
            return true;
        }
    }

    private final Meter time = new Meter();

    private void later(Duration by) {
        time.nanos += by.toNanos();
    }

    @Test
    void whoeverComesWithAnotherLimitIsHeldToThatOne() {
        var buckets = new Buckets<String>(10, time);
        assertThat(buckets.of("a", 2).tryConsume(2)).isTrue();
        assertThat(buckets.of("a", 2).tryConsume(1)).isFalse();
        assertThat(buckets.of("a", 5).getAvailableTokens()).isEqualTo(5);
        assertThat(buckets.of("b", 2).getAvailableTokens()).isEqualTo(2);
    }

    @Test
    void oneThatIsFullAgainIsForgottenAndOneThatIsNotIsKept() {
        var buckets = new Buckets<String>(10, time);
        buckets.of("early", 60).tryConsume(60);
        later(Duration.ofSeconds(59));
        buckets.of("late", 60).tryConsume(60);
        later(Duration.ofSeconds(1));
        buckets.of("other", 60).tryConsume(1);
        assertThat(buckets.size()).isEqualTo(2);
        assertThat(buckets.of("late", 60).getAvailableTokens()).isEqualTo(1);
    }

    @Test
    void thereAreNeverMoreThanTheBound() {
        var buckets = new Buckets<Integer>(10, time);
        for (int i = 0; i < 1000; i++) {
            buckets.of(i, 60).tryConsume(60);
            assertThat(buckets.size()).isBetween(1, 10);
        }
    }

    /** One client has a /64 of IPv6 (RFC 6177, from memory, leaves a site no less) and one address of IPv4. */
    @Test
    void aClientIsItsAddressOrItsNetwork() {
        assertThat(Guesses.client("2001:db8:1:2:3::4")).isEqualTo(Guesses.client("2001:db8:1:2:ffff::"))
                .isNotEqualTo(Guesses.client("2001:db8:1:3::4"));
        assertThat(Guesses.client("192.0.2.1")).isNotEqualTo(Guesses.client("192.0.2.2"));
        assertThat(Guesses.client("::ffff:192.0.2.1")).isEqualTo(Guesses.client("192.0.2.1"));
        assertThat(Guesses.client("unknown")).isEqualTo("unknown");
    }
}
