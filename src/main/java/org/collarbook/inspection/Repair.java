package org.collarbook.inspection;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;

/**
 * A repair, rebuilding or reheat treatment on record; the due month is no part of it. {@code corrected} is null where it
 * stands.
 */
public record Repair(UUID id, UUID containerId, Done done, Requalifier.Named requalifier, LocalDate keepUntil,
        @Nullable Corrected corrected, Instant recordedAt, UUID recordedBy) {

    public enum Kind {
        REPAIR,
        REBUILD,
        REHEAT
    }

    public enum Seams {
        WELDED,
        BRAZED
    }

    /** As it was filled in. {@code marksTransferred}: all original marks are on it still, or again. */
    public record Done(LocalDate performedOn, Kind kind, @Nullable Seams seams, Rin rin, String work,
            boolean marksTransferred, String certification) {}
}
