package org.collarbook.registry.fittings;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A time during which a tank was, or is, out of service; {@code returnedOn} is null while it is. */
public record Stop(UUID id, UUID containerId, LocalDate since, String reason, @Nullable LocalDate returnedOn,
        @Nullable String note, Instant recordedAt) {}
