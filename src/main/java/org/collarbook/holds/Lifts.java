package org.collarbook.holds;

import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.holds.Lifting.Way;
import org.collarbook.platform.Ids;
import org.collarbook.registry.Containers;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Lifts holds by what a person says; what a requalification lifts by itself, {@link LiftByRequalification} sees to. */
@Component
public class Lifts {

    private final JdbcClient jdbc;
    private final Holds holds;
    private final Containers containers;
    private final LiftByRequalification byRequalification;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Lifts(JdbcClient jdbc, Holds holds, Containers containers, LiftByRequalification byRequalification,
            ApplicationEventPublisher events, Clock clock) {
        this.jdbc = jdbc;
        this.holds = holds;
        this.containers = containers;
        this.byRequalification = byRequalification;
        this.events = events;
        this.clock = clock;
    }

    @Transactional
    public Lifting lift(UUID id, Way way, @Nullable String note, Caller by) {
        var hold = locked(id);
        if (hold == null) {
            return new Lifting.UnknownHold();
        }
        if (!hold.isStanding()) {
            return new Lifting.AlreadyLifted(hold);
        }
        var liftedBy = liftedBy(hold);
        if (!liftedBy.contains(way.kind())) {
            return new Lifting.NotLiftedSo(hold, liftedBy);
        }
        if (way instanceof Way.Requalification(var test) && !byRequalification.mayAnswer(hold, test)) {
            return new Lifting.NotAnswered(hold);
        }
        write(jdbc, id, way, note, clock.instant(), by.id());
        events.publishEvent(new HoldsLifted(List.of(hold.containerId())));
        return new Lifting.Lifted(holds.find(id).orElseThrow());
    }

    static void write(JdbcClient jdbc, UUID hold, Way way, @Nullable String note, Instant at, UUID by) {
        OffsetDateTime now = at.atOffset(ZoneOffset.UTC);
        jdbc.sql("""
                insert into hold_lift (id, hold_id, lifted_by, requalification_id, person, qualification, note,
                    occurred_at, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(Ids.next(), hold, way.kind().name(), way.requalification(), way.person(), way.qualification(),
                        note, now, now, by)
                .update();
    }

    /** Read anew once its container is locked, which may be another by then. */
    private @Nullable Hold locked(UUID id) {
        var before = holds.find(id).orElse(null);
        if (before == null) {
            return null;
        }
        containers.lock(before.containerId());
        var hold = holds.find(id).orElseThrow();
        return hold.containerId().equals(before.containerId()) ? hold : locked(id);
    }

    /** What lifts this hold from the container it is on. */
    public Set<LiftedBy> liftedBy(Hold hold) {
        return containers.find(hold.containerId()).map(container -> hold.reason().liftedBy(container.marks().kind()))
                .orElseThrow();
    }
}
