package org.collarbook.holds;

import java.util.List;
import java.util.UUID;

/** Holds on these containers were lifted; published in the transaction that did it. */
public record HoldsLifted(List<UUID> containerIds) {

    public HoldsLifted {
        containerIds = List.copyOf(containerIds);
    }
}
