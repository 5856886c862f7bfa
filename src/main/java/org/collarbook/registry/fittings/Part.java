package org.collarbook.registry.fittings;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.UUID;

import org.collarbook.regulation.Fittings;
import org.jspecify.annotations.Nullable;

/** A part on record, and its removal once it was taken out. */
public record Part(UUID id, UUID containerId, Fitted fitted, @Nullable Removal removal, Instant recordedAt,
        UUID recordedBy) {

    /** {@code manufactured} is the month stamped on the part itself. */
    public record Fitted(PartKind kind, @Nullable String maker, @Nullable String model, @Nullable String serial,
            @Nullable YearMonth manufactured, LocalDate fittedOn, Fittings.@Nullable Label labelledFor) {}

    /** {@code forGood}: nothing belongs in its place. */
    public record Removal(LocalDate removedOn, String reason, boolean forGood) {}
}
