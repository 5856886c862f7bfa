package org.collarbook.portal;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

import org.collarbook.custody.ReadingSource;

/**
 * What the gauge showed last, in percent of the volume: told, and never a reason for a yes. {@code stale}: older than
 * {@link #FRESH_DAYS} days at its site, so that it says little about today.
 */
record LastReading(BigDecimal percent, Instant takenAt, ReadingSource source, int ageDays, boolean stale) {

    /** Our own choice, no source. */
    static final int FRESH_DAYS = 7;

    static LastReading from(Lasts.Gauge gauge, LocalDate today) {
        int age = (int) Math.max(0, ChronoUnit.DAYS.between(gauge.takenOn(), today));
        return new LastReading(gauge.percent(), gauge.takenAt(), gauge.source(), age, age > FRESH_DAYS);
    }
}
