package org.collarbook.custody;

import java.util.UUID;

/** Gas was put in; published in the transaction that recorded it, not for rows of a batch. */
public record ContainerFilled(UUID containerId) {}
