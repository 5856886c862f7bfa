package org.collarbook.holds;

import java.time.Instant;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A hold on a container, standing until it is lifted; {@code recall} or {@code ledger} is what told of it, null when a
 * person did.
 */
public record Hold(UUID id, UUID containerId, HoldReason reason, @Nullable String note, @Nullable UUID recall,
        @Nullable UUID ledger, Instant occurredAt, Instant recordedAt, UUID recordedBy, @Nullable Lift lift) {

    /** How it was lifted: by that requalification, by that person, or by the office. */
    public record Lift(LiftedBy by, @Nullable UUID requalification, @Nullable String person,
            @Nullable String qualification, @Nullable String note, Instant recordedAt, UUID recordedBy) {}

    public boolean isStanding() {
        return lift == null;
    }
}
