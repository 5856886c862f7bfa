package org.collarbook.custody;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A container seen to change site; {@code fromSite} is stated only by somebody who saw where it stood. */
public record NewMovement(UUID containerId, UUID toSite, Instant occurredAt, @Nullable UUID fromSite) {

    /** As fine as the database tells moments apart. */
    public NewMovement {
        occurredAt = occurredAt.truncatedTo(ChronoUnit.MICROS);
    }
}
