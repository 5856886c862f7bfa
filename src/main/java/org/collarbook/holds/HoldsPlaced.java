package org.collarbook.holds;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** Holds were placed on these containers, since that moment at the earliest; published in the transaction that did it. */
public record HoldsPlaced(List<UUID> containerIds, Instant since) {

    public HoldsPlaced {
        containerIds = List.copyOf(containerIds);
    }
}
