package org.collarbook.inspection;

import java.util.UUID;

import org.collarbook.regulation.Requalification;
import org.jspecify.annotations.Nullable;

/** A requalification of one container; the mark as stamped, and the declaration that gave what the mark does not say. */
public record RequalificationEntry(UUID containerId, Requalification requalification, @Nullable String asStamped,
        @Nullable UUID declaration) {}
