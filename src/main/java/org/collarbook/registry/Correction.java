package org.collarbook.registry;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** What was changed of a container in one act, and the act that it takes back, if any. */
public record Correction(UUID id, UUID containerId, List<Difference> changes, String reason,
        @Nullable UUID takesBack, Instant recordedAt, UUID recordedBy) {

    public Correction {
        changes = List.copyOf(changes);
    }
}
