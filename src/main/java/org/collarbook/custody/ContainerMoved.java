package org.collarbook.custody;

import java.util.UUID;

/** A container stands elsewhere now; published in the transaction that moved it, not for rows of a batch. */
public record ContainerMoved(UUID containerId) {}
