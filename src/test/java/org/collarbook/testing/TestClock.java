package org.collarbook.testing;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;

import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;
import org.springframework.test.context.junit.jupiter.SpringExtension;

/** The service's clock under test: it stands until it is set. */
public final class TestClock extends Clock {

    public static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private volatile Instant now = noon(TODAY);

    /** Noon in UTC, when it is the same day almost everywhere. */
    private static Instant noon(LocalDate day) {
        return day.atTime(LocalTime.NOON).toInstant(ZoneOffset.UTC);
    }

    public void set(LocalDate day) {
        now = noon(day);
    }

    public void set(Instant instant) {
        now = instant;
    }

    @Override
    public Instant instant() {
        return now;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return Clock.fixed(now, zone);
    }

    static final class Reset implements BeforeEachCallback {

        @Override
        public void beforeEach(ExtensionContext context) {
            SpringExtension.getApplicationContext(context).getBean(TestClock.class).set(TODAY);
        }
    }

    @TestConfiguration(proxyBeanMethods = false)
    static class Configuration {

        @Bean
        @Primary
        TestClock testClock() {
            return new TestClock();
        }
    }
}
