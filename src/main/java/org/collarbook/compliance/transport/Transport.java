package org.collarbook.compliance.transport;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.regulation.Purpose;
import org.jspecify.annotations.Nullable;

/** A move on record; {@code refusedFor} is why it must not have been, where it must not. */
record Transport(UUID id, UUID containerId, Told told, List<String> refusedFor, LocalDate keepUntil,
        Instant recordedAt) {

    /** The inspection is that before the move. */
    record Told(LocalDate movedOn, BigDecimal percentFull, Purpose purpose, String from, String to, String carrier,
            LocalDate inspectedOn, String inspectedBy, boolean leakFree, boolean secured, @Nullable String findings,
            boolean happened) {}
}
