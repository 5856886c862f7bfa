package org.collarbook.custody.web;

import java.time.Instant;
import java.util.UUID;

import org.collarbook.custody.Movement;
import org.jspecify.annotations.Nullable;

record MovementResponse(UUID id, UUID containerId, @Nullable UUID fromSite, UUID toSite, Instant occurredAt,
        Instant recordedAt) {

    static MovementResponse from(Movement movement) {
        return new MovementResponse(movement.id(), movement.containerId(), movement.fromSite(), movement.toSite(),
                movement.occurredAt(), movement.recordedAt());
    }
}
