package org.collarbook.intake;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;

import org.collarbook.holds.Holds;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.registry.fittings.FittingBatch;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Looks up what few rows tell: a statement for each kind of fact that any row of the batch has, none for the others. */
@Component
class BesidesView {

    private final Holds holds;
    private final FittingBatch fittings;
    private final KnownDeclarations declarations;
    private final JdbcClient jdbc;

    BesidesView(Holds holds, FittingBatch fittings, KnownDeclarations declarations, JdbcClient jdbc) {
        this.holds = holds;
        this.fittings = fittings;
        this.declarations = declarations;
        this.jdbc = jdbc;
    }

    KnownBesides of(Collection<LedgerEntry> entries, Collection<RegisteredContainer> known) {
        var said = entries.stream().flatMap(entry -> entry.declared().stream()).map(RowDeclaration::said).toList();
        var told = entries.stream().map(LedgerEntry::besides).filter(besides -> besides != Besides.NOTHING).toList();
        if (said.isEmpty() && (told.isEmpty() || known.isEmpty())) {
            return KnownBesides.NOTHING;
        }
        var ids = known.stream().map(RegisteredContainer::id).toList();
        return new KnownBesides(
                any(told, one -> one.inService() || !one.holds().isEmpty()) ? holds.standing(ids) : Map.of(),
                any(told, one -> !one.parts().isEmpty()) ? fittings.parts(ids) : Map.of(),
                any(told, one -> !one.stops().isEmpty()) ? fittings.stops(ids) : Map.of(),
                any(told, one -> one.emptiedOn() != null) ? emptied(ids) : Map.of(), declarations.of(said),
                said.isEmpty() || known.isEmpty()
                        ? Map.of()
                        : declarations.jurisdictions(known.stream().map(RegisteredContainer::declaration).toList()));
    }

    private static boolean any(Collection<Besides> told, Predicate<Besides> has) {
        return told.stream().anyMatch(has);
    }

    private Map<UUID, Set<LocalDate>> emptied(Collection<UUID> ids) {
        var days = new HashMap<UUID, Set<LocalDate>>();
        jdbc.sql("select container_id, emptied_on from filed_emptying where container_id = any (?)")
                .param(ids.toArray(UUID[]::new)).query(row -> {
                    days.computeIfAbsent(row.getObject(1, UUID.class), id -> new HashSet<>())
                            .add(row.getObject(2, LocalDate.class));
                });
        return days;
    }
}
