package org.collarbook.registry;

import java.util.List;
import java.util.UUID;

/** Facts count for other records than before; those of these that are closed now count for nothing. */
public record RecordsRefiled(List<UUID> containerIds) {

    public RecordsRefiled {
        containerIds = List.copyOf(containerIds);
    }
}
