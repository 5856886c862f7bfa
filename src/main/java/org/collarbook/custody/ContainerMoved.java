package org.collarbook.custody;

import java.time.Instant;
import java.util.UUID;

/** A container stands elsewhere since that moment; published in the transaction that moved it, not for rows of a batch. */
public record ContainerMoved(UUID containerId, Instant occurredAt) {}
