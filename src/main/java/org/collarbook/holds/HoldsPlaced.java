package org.collarbook.holds;

import java.util.List;
import java.util.UUID;

/** Holds were placed on these containers; published in the transaction that did it. */
public record HoldsPlaced(List<UUID> containerIds) {

    public HoldsPlaced {
        containerIds = List.copyOf(containerIds);
    }
}
