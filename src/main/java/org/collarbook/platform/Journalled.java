package org.collarbook.platform;

import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** A module's facts about containers, read from their own tables; the journal enters them and proves them by it. */
public interface Journalled {

    List<JournalFact> of(Collection<UUID> containers);

    /** The next containers by id, by whichever module has them in its keeping: each of them has a chain. */
    default List<UUID> containersAfter(UUID container, int atMost) {
        return List.of();
    }
}
