package org.collarbook.custody;

import java.time.Instant;
import java.util.UUID;

/** A container seen standing at a site. */
public record Sighting(UUID id, UUID containerId, UUID siteId, Instant occurredAt, Instant recordedAt) {}
