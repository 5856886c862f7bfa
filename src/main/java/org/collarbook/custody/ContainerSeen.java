package org.collarbook.custody;

import java.time.Instant;
import java.util.UUID;

/** Somebody saw a container at that moment; published in the transaction that recorded it. */
public record ContainerSeen(UUID containerId, Instant occurredAt) {}
