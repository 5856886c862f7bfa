package org.collarbook.registry;

import java.util.UUID;

/** A container's marks or particulars were corrected; published in the transaction that did it, not for a batch. */
public record ContainerChanged(UUID containerId) {}
