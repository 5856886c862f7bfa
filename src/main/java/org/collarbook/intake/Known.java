package org.collarbook.intake;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.registry.NaturalKey;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.registry.Tag;

/**
 * What the register knows of the containers and tags of one batch, and of those that could be meant as well;
 * {@code closed} were merged into others.
 */
record Known(Map<NaturalKey, RegisteredContainer> containers, Map<Tag, UUID> tags, Map<UUID, String> siteCodes,
        Map<UUID, List<RequalificationEntry>> history, Map<UUID, Set<LocalDate>> fills, Set<UUID> closed,
        KnownBesides besides) {

    List<RequalificationEntry> history(RegisteredContainer container) {
        return history.getOrDefault(container.id(), List.of());
    }
}
