package org.collarbook.custody;

import java.time.Instant;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A container changing site, as recorded; {@code fromSite} null is not known. */
public record Movement(UUID id, UUID containerId, @Nullable UUID fromSite, UUID toSite, Instant occurredAt,
        Instant recordedAt) {}
