package org.collarbook.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.custody.Places;
import org.collarbook.inspection.Requalifications;
import org.collarbook.registry.Absorbed;
import org.collarbook.registry.ContainerBatch;
import org.collarbook.registry.NaturalKey;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.registry.Tag;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Looks a batch of rows up in the register, set by set: two statements, four more where containers are known. What
 * few rows tell is for {@link BesidesView}.
 */
@Component
class RegisterView {

    private final ContainerBatch containers;
    private final Requalifications requalifications;
    private final Places places;
    private final Absorbed absorbed;
    private final BesidesView besides;
    private final JdbcClient jdbc;

    RegisterView(ContainerBatch containers, Requalifications requalifications, Places places, Absorbed absorbed,
            BesidesView besides, JdbcClient jdbc) {
        this.besides = besides;
        this.absorbed = absorbed;
        this.containers = containers;
        this.places = places;
        this.requalifications = requalifications;
        this.jdbc = jdbc;
    }

    Known of(Collection<LedgerEntry> entries) {
        var keys = new ArrayList<NaturalKey>(entries.size());
        var tags = new ArrayList<Tag>();
        for (var entry : entries) {
            keys.add(entry.key());
            if (entry.tag() != null) {
                tags.add(entry.tag());
            }
        }
        var known = keys.isEmpty() ? Map.<NaturalKey, RegisteredContainer>of() : containers.alike(keys);
        var inUse = tags.isEmpty() ? Map.<Tag, UUID>of() : containers.tagsInUse(tags);
        if (known.isEmpty()) {
            return new Known(known, inUse, Map.of(), Map.of(), Map.of(), Set.of(), besides.of(entries, List.of()));
        }
        var ids = known.values().stream().map(RegisteredContainer::id).toList();
        return new Known(known, inUse, siteCodes(ids), requalifications.everRecorded(ids), fills(ids),
                Set.copyOf(absorbed.among(ids)), besides.of(entries, known.values()));
    }

    private Map<UUID, String> siteCodes(Collection<UUID> ids) {
        return places.of(ids).entrySet().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, stands -> stands.getValue().code()));
    }

    private Map<UUID, Set<LocalDate>> fills(Collection<UUID> ids) {
        var days = new HashMap<UUID, Set<LocalDate>>();
        jdbc.sql("select container_id, filled_on from filed_fill where container_id = any (?)")
                .param(ids.toArray(UUID[]::new)).query(row -> {
                    days.computeIfAbsent(row.getObject(1, UUID.class), id -> new HashSet<>())
                            .add(row.getObject(2, LocalDate.class));
                });
        return days;
    }
}
