package org.collarbook.compliance.declarations;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.compliance.Changes;
import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.PastFills;
import org.collarbook.compliance.Requirements;
import org.collarbook.platform.BulkCopy;
import org.collarbook.platform.Journal;
import org.collarbook.registry.ContainerBatch;
import org.collarbook.registry.ContainerBatch.Change;
import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.Declaring;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Carries a declaration out, or its withdrawal, for some containers: their facts, chains and due months together. */
@Component
@Transactional(propagation = Propagation.MANDATORY)
class ApplyDeclaration {

    static final UUID FIRST = new UUID(0, 0);
    static final int CHUNK = 500;

    private static final String UNTOLD = """
            select m.container_id from declaration_member m join container c on c.id = m.container_id
            where m.declaration_id = ? and not exists (select from declaration_outcome o
              where o.declaration_id = m.declaration_id and o.container_id = m.container_id)
            """;
    /** Closed records too: one that is opened again must not rest on what was withdrawn. */
    private static final String RESTING = """
            select o.container_id from declaration_outcome o join container c on c.id = o.container_id
            where o.declaration_id = ? and o.declaration_id = any (c.declared_in)
            """;
    private static final String NEXT = "and c.id > ? order by c.id limit ?";
    private static final String LOCKED = " for no key update of c";

    private final JdbcClient jdbc;
    private final BulkCopy copy;
    private final ContainerBatch batch;
    private final KnownContainers containers;
    private final Journal journal;
    private final Requirements requirements;
    private final PastFills fills;
    private final Clock clock;

    ApplyDeclaration(JdbcClient jdbc, BulkCopy copy, ContainerBatch batch, KnownContainers containers, Journal journal,
            Requirements requirements, PastFills fills, Clock clock) {
        this.jdbc = jdbc;
        this.copy = copy;
        this.batch = batch;
        this.containers = containers;
        this.journal = journal;
        this.requirements = requirements;
        this.fills = fills;
        this.clock = clock;
    }

    /** Whoever carries it out or withdraws it waits for the other; false: it is withdrawn. */
    boolean lock(UUID declaration) {
        jdbc.sql("select declaration_id from declaration_sweep where declaration_id = ? for update")
                .param(declaration).query(UUID.class).optional();
        return !jdbc.sql("select exists (select from declaration_withdrawal where declaration_id = ?)")
                .param(declaration).query(Boolean.class).single();
    }

    /**
     * Fills what is unknown of the next containers that nobody else is at: to wait for one with others in hand could stop
     * both for good. Their ids; none once it is withdrawn.
     */
    List<UUID> fillNext(GroupDeclaration declaration, UUID after) {
        return lock(declaration.id()) ? fill(declaration, next(UNTOLD, declaration, after)) : List.of();
    }

    /** The same for one container, which is waited for. */
    void fillOne(GroupDeclaration declaration, UUID container) {
        if (lock(declaration.id())) {
            fill(declaration, one(UNTOLD, declaration, container));
        }
    }

    /** Makes unknown again what rests on a declaration that was withdrawn. */
    List<UUID> undoNext(GroupDeclaration declaration, UUID after) {
        lock(declaration.id());
        return undo(declaration, next(RESTING, declaration, after));
    }

    void undoOne(GroupDeclaration declaration, UUID container) {
        undo(declaration, one(RESTING, declaration, container));
    }

    /** The next that are still to be done, whoever is at them. */
    List<UUID> untold(UUID declaration, UUID after) {
        return jdbc.sql(UNTOLD + NEXT).params(declaration, after, CHUNK).query(UUID.class).list();
    }

    List<UUID> resting(UUID declaration, UUID after) {
        return jdbc.sql(RESTING + NEXT).params(declaration, after, CHUNK).query(UUID.class).list();
    }

    /** Notes what is over, where it is. */
    void finish(UUID declaration) {
        var now = clock.instant().atOffset(ZoneOffset.UTC);
        if (lock(declaration)) {
            if (untold(declaration, FIRST).isEmpty()) {
                jdbc.sql("update declaration_sweep set finished_at = ? where declaration_id = ?"
                        + " and finished_at is null").params(now, declaration).update();
            }
        } else if (resting(declaration, FIRST).isEmpty()) {
            jdbc.sql("update declaration_sweep set undone_at = ? where declaration_id = ? and undone_at is null")
                    .params(now, declaration).update();
        }
    }

    private List<UUID> next(String of, GroupDeclaration declaration, UUID after) {
        return jdbc.sql(of + NEXT + LOCKED + " skip locked").params(declaration.id(), after, CHUNK).query(UUID.class)
                .list();
    }

    private List<UUID> one(String of, GroupDeclaration declaration, UUID container) {
        return jdbc.sql(of + "and c.id = ?" + LOCKED).params(declaration.id(), container).query(UUID.class).list();
    }

    /** What is read here was locked before, so nobody changes it meanwhile. */
    private List<UUID> fill(GroupDeclaration declaration, List<UUID> locked) {
        var told = new HashMap<UUID, Declaring>();
        var changes = new ArrayList<Change>();
        for (var known : containers.byIds(locked)) {
            var declaring = declaring(declaration.declaration(), known);
            told.put(known.id(), declaring);
            if (!declaring.filled().isEmpty()) {
                changes.add(new Change(known.container(), declaring.after()));
            }
        }
        change(changes, declaration.reason(), declaration.recordedBy());
        var now = clock.instant().atOffset(ZoneOffset.UTC);
        copy.into("declaration_outcome (declaration_id, container_id, filled, known, contradicting, recorded_at)",
                locked, id -> {
                    var one = told.get(id);
                    return new @Nullable Object[]{declaration.id(), id, words(one == null ? Set.of() : one.filled()),
                            words(one == null ? Set.of() : one.known()),
                            words(one == null ? Set.of() : one.contradicting()), now};
                });
        return locked;
    }

    static Declaring declaring(Declaration said, KnownContainer known) {
        return Declaring.of(known.container(), said, known.facts().jurisdiction(), known.where() != null);
    }

    private List<UUID> undo(GroupDeclaration declaration, List<UUID> locked) {
        var why = declaration.withdrawal();
        if (why != null) {
            change(batch.byIds(locked).stream()
                    .map(before -> new Change(before, Declaring.withdrawn(before, declaration.id()))).toList(),
                    declaration.reason(why), why.recordedBy());
        }
        return locked;
    }

    private void change(List<Change> changes, String reason, UUID by) {
        if (changes.isEmpty()) {
            return;
        }
        batch.update(changes, reason, by);
        var changed = changes.stream().map(change -> change.before().id()).toList();
        journal.enter(changed);
        requirements.reassess(changed);
        fills.judge(changed.stream().collect(Collectors.toMap(id -> id, id -> Changes.EVER)));
    }

    private static String[] words(Set<DeclarableFact> facts) {
        return facts.stream().sorted().map(DeclarableFact::word).toArray(String[]::new);
    }
}
