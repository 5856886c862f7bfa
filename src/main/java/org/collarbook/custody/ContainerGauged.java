package org.collarbook.custody;

import java.util.UUID;

/** A gauge reading was recorded; published in the transaction that recorded it. It changes no judgement. */
public record ContainerGauged(UUID containerId) {}
