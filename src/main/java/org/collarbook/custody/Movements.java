package org.collarbook.custody;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Ids;
import org.collarbook.platform.StoredMoment;
import org.collarbook.registry.Containers;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Containers changing site. The latest by the time it happened decides where one stands; see {@link Standing}. */
@Component
public class Movements {

    private final JdbcClient jdbc;
    private final Containers containers;
    private final Standing standing;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Movements(JdbcClient jdbc, Containers containers, Standing standing, ApplicationEventPublisher events,
            Clock clock) {
        this.jdbc = jdbc;
        this.containers = containers;
        this.standing = standing;
        this.events = events;
        this.clock = clock;
    }

    @Transactional
    public Moving record(NewMovement movement, Caller by) {
        if (!containers.lock(movement.containerId())) {
            return new Moving.UnknownContainer();
        }
        var stated = movement.fromSite();
        var before = standing.now(movement.containerId());
        var elsewhere = stated == null
                ? Optional.<UUID>empty()
                : elsewhere(before, movement.containerId(), stated, movement.occurredAt());
        if (stated != null && elsewhere.isPresent()) {
            return new Moving.Disputed(elsewhere.get(), stated);
        }
        var id = Ids.next();
        append(id, movement, stated == null ? origin(before, movement) : stated, by.id());
        var recorded = standing.moved(before, id, movement);
        events.publishEvent(new ContainerMoved(movement.containerId(), movement.occurredAt()));
        return recorded;
    }

    /** Where the movements known so far had the container at that time. */
    public Optional<UUID> placeAt(UUID container, Instant at) {
        return standing.at(container, at).map(Standing.Stood::site);
    }

    /** Where the register has it at that time, if not at the site, which does not claim it either. */
    public Optional<UUID> elsewhere(UUID container, UUID site, Instant at) {
        return elsewhere(standing.now(container), container, site, at);
    }

    private Optional<UUID> elsewhere(Standing.Now now, UUID container, UUID site, Instant at) {
        return standing.at(now, container, at).map(Standing.Stood::site).filter(
                recorded -> !recorded.equals(site) && !standing.claimedAt(now, container, at).contains(site));
    }

    /** Of several places, and of several moves at one moment, nobody knows from which it came. */
    private @Nullable UUID origin(Standing.Now now, NewMovement movement) {
        var container = movement.containerId();
        var at = movement.occurredAt();
        return standing.at(now, container, at)
                .filter(stood -> stood.since().isBefore(at) && standing.claimedAt(now, container, at).isEmpty())
                .map(Standing.Stood::site).orElse(null);
    }

    private void append(UUID id, NewMovement movement, @Nullable UUID from, UUID by) {
        jdbc.sql("""
                insert into movement (id, container_id, from_site_id, to_site_id, occurred_at, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?)""")
                .params(id, movement.containerId(), from, movement.toSite(), utc(movement.occurredAt()),
                        utc(clock.instant()), by)
                .update();
    }

    /** A container's movements, the latest first; from just before the one given, when one is. */
    public List<Movement> of(UUID container, @Nullable Instant beforeTime, @Nullable UUID beforeId, int atMost) {
        return jdbc.sql("""
                select id, container_id, from_site_id, to_site_id, occurred_at, recorded_at from filed_movement
                where container_id = :container
                  and (cast(:time as timestamptz) is null or (occurred_at, id) < (:time, cast(:id as uuid)))
                order by occurred_at desc, id desc limit :most""")
                .param("container", container).param("time", beforeTime == null ? null : utc(beforeTime))
                .param("id", beforeId).param("most", atMost).query(Movements::read).list();
    }

    private static Movement read(ResultSet row, int number) throws SQLException {
        return new Movement(row.getObject("id", UUID.class), row.getObject("container_id", UUID.class),
                row.getObject("from_site_id", UUID.class), row.getObject("to_site_id", UUID.class),
                StoredMoment.of(row, "occurred_at"),
                StoredMoment.of(row, "recorded_at"));
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
