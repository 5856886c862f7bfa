package org.collarbook.holds;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.access.Caller;
import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.inspection.Requalifications;
import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.collarbook.registry.Containers;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** The holds on containers; facts, so placed and lifted, never changed. Several stand side by side. */
@Component
public class Holds {

    /** A scanner's clock may run ahead by so much. */
    private static final Duration AHEAD = Duration.ofMinutes(5);

    private final JdbcClient jdbc;
    private final Containers containers;
    private final Requalifications requalifications;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Holds(JdbcClient jdbc, Containers containers, Requalifications requalifications, ApplicationEventPublisher events,
            Clock clock) {
        this.jdbc = jdbc;
        this.containers = containers;
        this.requalifications = requalifications;
        this.events = events;
        this.clock = clock;
    }

    /**
     * Places a hold from the moment on at which its reason occurred. Refuses by problem a moment ahead, and one before
     * the container was made; nothing was written then.
     */
    @Transactional(noRollbackFor = ProblemException.class)
    public Placing place(UUID container, HoldReason reason, @Nullable String note, Instant at, Caller by) {
        if (!containers.lock(container)) {
            return new Placing.UnknownContainer();
        }
        var known = containers.find(container).orElseThrow();
        var occurredAt = passed(at);
        refuseImpossible(known, occurredAt);
        if (isCondemned(container)) {
            return new Placing.AlreadyCondemned();
        }
        if (reason.condemns(known.marks().specification().value())) {
            return condemn(known, occurredAt, by);
        }
        return new Placing.Placed(find(keep(container, reason, note, occurredAt, by.id())).orElseThrow());
    }

    /**
     * Places what the register itself has found, of a container that is locked. One that is condemned is held all the
     * same: should the condemnation turn out to be a mistake, this was none.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public UUID keep(UUID container, HoldReason reason, @Nullable String note, Instant at, UUID by) {
        var id = Ids.next();
        var now = clock.instant();
        var occurredAt = at.isAfter(now) ? now : at;
        jdbc.sql("""
                insert into hold (id, container_id, reason, note, occurred_at, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?)""")
                .params(id, container, reason.name(), note, occurredAt.atOffset(ZoneOffset.UTC),
                        now.atOffset(ZoneOffset.UTC), by)
                .update();
        events.publishEvent(new HoldsPlaced(List.of(container), occurredAt));
        return id;
    }

    /** A hold stands from now on at the latest. */
    private Instant passed(Instant at) {
        var now = clock.instant();
        if (at.isAfter(now.plus(AHEAD))) {
            throw Problem.invalid("/occurredAt", "IN_THE_FUTURE", at.toString(), "not after now, " + now)
                    .asException();
        }
        return at.isAfter(now) ? now : at;
    }

    private void refuseImpossible(RegisteredContainer container, Instant occurredAt) {
        var made = container.marks().manufactured();
        // the widest date on earth: when it was at the site is not known here
        if (made != null && YearMonth.from(occurredAt.atOffset(ZoneOffset.MAX)).isBefore(made.value())) {
            throw Problem.invalid("/occurredAt", "BEFORE_MANUFACTURE", occurredAt.toString(),
                    "not before the original test in " + made.value()).asException();
        }
    }

    private boolean isCondemned(UUID container) {
        return requalifications.of(List.of(container)).getOrDefault(container, List.of()).stream()
                .anyMatch(done -> done.result() == Result.CONDEMNED);
    }

    /** NFPA 58 Annex C.3.2.2. */
    private Placing condemn(RegisteredContainer container, Instant occurredAt, Caller by) {
        // no site's month begins later than this one, and a condemnation must not lie ahead anywhere
        var month = YearMonth.from(occurredAt.atOffset(ZoneOffset.MIN));
        var made = container.marks().manufactured();
        if (made != null && month.isBefore(made.value())) {
            month = made.value();
        }
        requalifications.append(new RequalificationEntry(container.id(),
                new Requalification(month, null, false, false, null, false, Result.CONDEMNED), null, null), by);
        return new Placing.Condemned(month);
    }

    /** A container's, the latest recorded first; those that stand, or all. */
    public List<Hold> of(UUID container, boolean standingOnly, @Nullable UUID before, PageSize size) {
        return jdbc.sql(HoldRows.SELECT + """
                where h.container_id = :container and (l.hold_id is null or not :standing)
                  and h.id < coalesce(:before::uuid, 'ffffffff-ffff-ffff-ffff-ffffffffffff')
                order by h.id desc limit :most""").param("container", container).param("standing", standingOnly)
                .param("before", before).param("most", size.limit()).query(HoldRows::read).list();
    }

    public Optional<Hold> find(UUID hold) {
        return jdbc.sql(HoldRows.SELECT + "where h.id = ?").param(hold).query(HoldRows::read).optional();
    }

    /** A container's that stood at that moment, those among them that were lifted since. */
    public List<Hold> standingAt(UUID container, Instant at) {
        return jdbc.sql(HoldRows.SELECT + "where h.container_id = :container and h.occurred_at <= :at"
                + " and (l.hold_id is null or l.occurred_at > :at) order by h.occurred_at, h.id")
                .param("container", container).param("at", at.atOffset(ZoneOffset.UTC)).query(HoldRows::read).list();
    }

    /** Those that stand, of those of the containers that have any, the earliest first. */
    public Map<UUID, List<Hold>> standing(Collection<UUID> ids) {
        return jdbc.sql(HoldRows.SELECT + "where h.container_id = any (?) and l.hold_id is null"
                + " order by h.container_id, h.occurred_at, h.id").param(ids.toArray(UUID[]::new))
                .query(HoldRows::read).list().stream().collect(Collectors.groupingBy(Hold::containerId));
    }
}
