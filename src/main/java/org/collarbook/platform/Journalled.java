package org.collarbook.platform;

import java.util.List;
import java.util.UUID;

/**
 * A module's facts about containers, read from their own tables; the journal enters them and proves them by it. Each
 * select gives id, container_id, kind, occurred_at, recorded_at, recorded_by, the row as {@code content} and a second row
 * that belongs to it as {@code more} (both json), of the containers that are {@link #ASKED}.
 */
public interface Journalled {

    /** {@code where f.container_id = } this. */
    String ASKED = "any ((select ids from asked)::uuid[])";

    List<String> selects();

    /** The next containers by id, by whichever module has them in its keeping: each of them has a chain. */
    default List<UUID> containersAfter(UUID container, int atMost) {
        return List.of();
    }
}
