package org.collarbook.platform;

import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** A module's facts about containers, read from their own tables; the journal enters them and proves them by it. */
public interface Journalled {

    List<JournalFact> of(Collection<UUID> containers);
}
