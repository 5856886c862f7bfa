package org.collarbook.custody;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.collarbook.regulation.Reason;

/** What became known of a fill after it was recorded; with no reasons, that it was allowed after all. */
public record FillFlag(UUID id, UUID fillId, UUID containerId, List<Reason> reasons, Instant recordedAt,
        UUID recordedBy) {

    public FillFlag {
        reasons = List.copyOf(reasons);
    }
}
