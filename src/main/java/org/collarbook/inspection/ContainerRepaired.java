package org.collarbook.inspection;

import java.util.UUID;

/** A repair, rebuilding or reheat treatment is on record; no due month moves with it. Published in its transaction. */
public record ContainerRepaired(UUID containerId) {}
