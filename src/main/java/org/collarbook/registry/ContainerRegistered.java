package org.collarbook.registry;

import java.util.UUID;

/** One container was registered; published in the transaction that did it, not for rows of a batch. */
public record ContainerRegistered(UUID containerId) {}
