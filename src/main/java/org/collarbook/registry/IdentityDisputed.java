package org.collarbook.registry;

import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;

/** Nobody is sure yet which of these is which: they are to be held until somebody is. */
public record IdentityDisputed(List<UUID> containerIds, String note, Caller by) {

    public IdentityDisputed {
        containerIds = List.copyOf(containerIds);
    }
}
