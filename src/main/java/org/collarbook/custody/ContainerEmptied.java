package org.collarbook.custody;

import java.util.UUID;

/** A container was found empty; published in the transaction that recorded it. */
public record ContainerEmptied(UUID containerId) {}
