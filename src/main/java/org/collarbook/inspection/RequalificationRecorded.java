package org.collarbook.inspection;

import java.util.UUID;

/** A completed inspection or test was recorded; published in the same transaction, not for rows of a batch. */
public record RequalificationRecorded(UUID containerId) {}
