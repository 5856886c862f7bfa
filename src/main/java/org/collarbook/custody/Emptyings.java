package org.collarbook.custody;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.collarbook.registry.Containers;
import org.collarbook.registry.RegisteredContainer;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Containers that came back empty, as facts: what was filled in time may be used up until then. */
@Component
public class Emptyings {

    private final JdbcClient jdbc;
    private final Containers containers;
    private final Places places;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Emptyings(JdbcClient jdbc, Containers containers, Places places, ApplicationEventPublisher events, Clock clock) {
        this.jdbc = jdbc;
        this.containers = containers;
        this.places = places;
        this.events = events;
        this.clock = clock;
    }

    /** Refuses by problem: not found, before the month of manufacture, recorded already; nothing was written then. */
    @Transactional(noRollbackFor = ProblemException.class)
    public Emptying record(UUID container, Instant emptiedAt, @Nullable String how, Caller by) {
        containers.lockKnown(container);
        var day = LocalDate.ofInstant(emptiedAt, places.zoneOf(container));
        containers.find(container).ifPresent(known -> refuseImpossible(known, day));
        var emptying = new Emptying(Ids.next(), container, emptiedAt, day, how);
        int stored = jdbc.sql("""
                insert into emptying (id, container_id, emptied_at, emptied_on, how, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?) on conflict on constraint emptying_once do nothing""")
                .params(emptying.id(), container, emptiedAt.atOffset(ZoneOffset.UTC), day, how,
                        clock.instant().atOffset(ZoneOffset.UTC), by.id())
                .update();
        if (stored == 0) {
            throw Problem.conflict("ALREADY_RECORDED", "It is recorded already that this container was empty at "
                    + emptiedAt + ". Nothing was stored.").asException();
        }
        events.publishEvent(new ContainerEmptied(container));
        return emptying;
    }

    /** A container that was empty on that day. */
    public record Emptied(UUID containerId, LocalDate day) {}

    /**
     * Those that a ledger tells, each at the end of its day where the container stands: a fill of that day came before.
     * Publishes no events.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void insert(List<Emptied> emptied, UUID by) {
        var now = clock.instant().atOffset(ZoneOffset.UTC);
        jdbc.sql("""
                insert into emptying (id, container_id, emptied_at, emptied_on, recorded_at, recorded_by)
                select g.id, g.container, least(:now, (g.day + 1)::timestamp at time zone coalesce(s.zone, 'UTC')
                    - interval '1 second'), g.day, :now, :by
                from unnest(:ids::uuid[], :containers::uuid[], :days::date[]) as g (id, container, day)
                  left join placement p on p.container_id = g.container left join site s on s.id = p.site_id
                on conflict on constraint emptying_once do nothing""")
                .param("now", now).param("by", by)
                .param("ids", emptied.stream().map(one -> Ids.next()).toArray(UUID[]::new))
                .param("containers", emptied.stream().map(Emptied::containerId).toArray(UUID[]::new))
                .param("days", emptied.stream().map(one -> one.day().toString()).toArray(String[]::new)).update();
    }

    private static void refuseImpossible(RegisteredContainer known, LocalDate day) {
        var manufactured = known.marks().manufactured();
        if (manufactured != null && day.isBefore(manufactured.value().atDay(1))) {
            throw Problem.invalid("/emptiedAt", "BEFORE_MANUFACTURE", day.toString(),
                    "not before the original test in " + manufactured.value()).asException();
        }
    }
}
