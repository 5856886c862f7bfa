package org.collarbook.registry.fittings;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.UUID;

import org.collarbook.regulation.Fittings;
import org.jspecify.annotations.Nullable;

/** {@code removedOn} is absent while it is in place. */
public record PartResponse(UUID id, UUID containerId, PartKind kind, @Nullable String maker, @Nullable String model,
        @Nullable String serial, @Nullable YearMonth manufactured, LocalDate fittedOn,
        Fittings.@Nullable Label labelledFor, boolean inPlace, @Nullable LocalDate removedOn,
        @Nullable String removedFor, @Nullable Boolean removedForGood, Instant recordedAt) {

    public static PartResponse from(Part part) {
        var fitted = part.fitted();
        var removal = part.removal();
        return new PartResponse(part.id(), part.containerId(), fitted.kind(), fitted.maker(), fitted.model(),
                fitted.serial(), fitted.manufactured(), fitted.fittedOn(), fitted.labelledFor(), removal == null,
                removal == null ? null : removal.removedOn(), removal == null ? null : removal.reason(),
                removal == null ? null : removal.forGood(), part.recordedAt());
    }
}
