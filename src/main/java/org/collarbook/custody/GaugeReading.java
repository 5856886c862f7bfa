package org.collarbook.custody;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** What the gauge of a tank showed, in percent of its volume; {@code siteId} is where it stood then, where known. */
public record GaugeReading(UUID id, UUID containerId, BigDecimal percent, Instant gaugedAt, LocalDate gaugedOn,
        ReadingSource source, @Nullable UUID siteId, Instant recordedAt) {}
