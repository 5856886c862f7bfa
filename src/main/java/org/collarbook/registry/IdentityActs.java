package org.collarbook.registry;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.collarbook.registry.IdentityAct.Kind;
import org.collarbook.registry.IdentityActRows.New;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Records found to be one container are merged, one found to be two is split, and either is undone. No fact is changed:
 * an act says under which record each counts.
 */
@Component
public class IdentityActs {

    private final Containers containers;
    private final Absorbed absorbed;
    private final IdentityActRows rows;
    private final Refiling refiling;
    private final FillSafeguard safeguard;
    private final ApplicationEventPublisher events;

    IdentityActs(Containers containers, Absorbed absorbed, IdentityActRows rows, Refiling refiling,
            FillSafeguard safeguard, ApplicationEventPublisher events) {
        this.containers = containers;
        this.absorbed = absorbed;
        this.rows = rows;
        this.refiling = refiling;
        this.safeguard = safeguard;
        this.events = events;
    }

    /** Why an act is done; {@code fillWillBeAllowed}: whoever does it has seen that it may allow a fill. */
    public record Said(String reason, boolean fillWillBeAllowed) {}

    /**
     * The record absorbs the other one. Whatever the other one says otherwise must be named in {@code setAside}: nothing
     * is given up unseen.
     */
    @Transactional
    public IdentityAct merge(UUID kept, @Nullable String ifMatch, UUID other, Collection<String> setAside, Said said,
            Caller by) {
        refuseSame(kept, other);
        containers.lockForIdentity(List.of(kept, other));
        var into = found(kept);
        var from = found(other);
        new Revision(into.version()).requireMatch(ifMatch);
        List.of(kept, other).forEach(absorbed::refuse);
        Contradictions.between(into, from).refuseUnseen(setAside);
        var watch = safeguard.watch(List.of(kept, other));
        var act = merge(new New(Kind.MERGE, other, kept, List.copyOf(new TreeSet<>(setAside)),
                confirmed(said, watch), null, said.reason()), by);
        return done(act, watch, said, kept, other);
    }

    private UUID merge(New merge, Caller by) {
        var act = rows.write(merge, by.id());
        refiling.all(act, merge.from(), merge.into());
        refiling.close(merge.from(), merge.into());
        return act;
    }

    /** What was found to be a second container: its marks, the facts that are its own, and whether both are to be held. */
    public record Second(NewContainer content, Set<UUID> facts, boolean disputed) {

        public Second {
            facts = Set.copyOf(facts);
        }
    }

    /**
     * The record was two containers: the second is registered and gets the facts that are named. What is not named stays;
     * of the second, no more is known than that.
     */
    @Transactional
    public IdentityAct split(UUID first, @Nullable String ifMatch, Second second, Said said, Caller by) {
        containers.lockForIdentity(List.of(first));
        new Revision(found(first).version()).requireMatch(ifMatch);
        absorbed.refuse(first);
        var watch = safeguard.watch(List.of(first));
        var registered = switch (containers.register(second.content(), by)) {
            case Registration.Registered(var id) -> id;
            case Registration.Refused refused -> throw refused.problem().asException();
        };
        var act = rows.write(new New(Kind.SPLIT, first, registered, List.of(), confirmed(said, watch), null,
                said.reason()), by.id());
        if (refiling.some(act, second.facts(), first, registered) < second.facts().size()) {
            throw Problem.invalid("/facts", "NOT_OF_THIS_CONTAINER", second.facts().size() + " ids", "ids of facts that"
                    + " count for container " + first + ": see its history").asException();
        }
        if (second.disputed()) {
            events.publishEvent(new IdentityDisputed(List.of(first, registered), said.reason(), by));
        }
        return done(act, watch, said, first, registered);
    }

    /** Puts everything back as it was before the act; what was recorded since stays where it was recorded. */
    @Transactional
    public IdentityAct undo(UUID id, Said said, Caller by) {
        var act = rows.find(id).orElseThrow(() -> Problem.notFound("act").asException());
        containers.lockForIdentity(List.of(act.from(), act.into()));
        refuseUndone(rows.find(id).orElseThrow());
        rows.laterThan(act).ifPresent(later -> {
            throw Problem.conflict("LATER_ACT", "Act " + later + " came later and touches the same record. Nothing was"
                    + " stored: undo that one first.").with("act", later).asException();
        });
        var watch = safeguard.watch(open(act.from(), act.into()));
        rows.writeUndo(id, confirmed(said, watch), said.reason(), by.id());
        refiling.back(id);
        switch (act.kind()) {
            case MERGE -> refiling.open(act.from());
            // the second record is closed, and what was recorded on it since counts for the first
            case SPLIT -> merge(new New(Kind.MERGE, act.into(), act.from(), List.of(), List.of(), id, said.reason()),
                    by);
        }
        return done(id, watch, said, act.from(), act.into());
    }

    private IdentityAct done(UUID act, FillSafeguard.Watch watch, Said said, UUID one, UUID other) {
        events.publishEvent(new RecordsRefiled(List.of(one, other)));
        if (!said.fillWillBeAllowed()) {
            watch.refuseAllowed(open(one, other));
        }
        return rows.find(act).orElseThrow();
    }

    private List<UUID> open(UUID one, UUID other) {
        var both = List.of(one, other);
        var closed = absorbed.among(both);
        return both.stream().filter(id -> !closed.contains(id)).toList();
    }

    private static List<String> confirmed(Said said, FillSafeguard.Watch watch) {
        return said.fillWillBeAllowed() ? watch.refusedFor() : List.of();
    }

    private RegisteredContainer found(UUID id) {
        return containers.require(id);
    }

    private static void refuseSame(UUID kept, UUID other) {
        if (kept.equals(other)) {
            throw Problem.invalid("/absorbed", "SAME_CONTAINER", other.toString(), "another record than the one it is"
                    + " merged into").asException();
        }
    }

    private static void refuseUndone(IdentityAct act) {
        if (act.undone() != null) {
            throw Problem.conflict("ALREADY_UNDONE", "This act was undone at " + act.undone().recordedAt()
                    + ". Nothing was stored.").asException();
        }
    }

    public Optional<IdentityAct> find(UUID id) {
        return rows.find(id);
    }
}
