package org.collarbook.inspection;

import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.regulation.Requalification;
import org.jspecify.annotations.Nullable;

/**
 * A requalification of one container; the mark as stamped, the declaration that gave what the mark does not say, and the
 * day where more than its month is known.
 */
public record RequalificationEntry(UUID containerId, Requalification requalification, @Nullable String asStamped,
        @Nullable UUID declaration, @Nullable LocalDate performedOn) {

    public RequalificationEntry(UUID containerId, Requalification requalification, @Nullable String asStamped,
            @Nullable UUID declaration) {
        this(containerId, requalification, asStamped, declaration, null);
    }
}
