package org.collarbook.inspection;

import java.time.LocalDate;
import java.util.UUID;

/**
 * A completed inspection or test was recorded, or corrected, that was done on that day at the earliest; published in the
 * same transaction, not for rows of a batch.
 */
public record RequalificationRecorded(UUID containerId, LocalDate since) {}
