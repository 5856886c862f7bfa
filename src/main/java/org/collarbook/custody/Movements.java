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
import org.collarbook.registry.Containers;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Containers changing site. The latest by the time it happened decides where one stands. */
@Component
public class Movements {

    private final JdbcClient jdbc;
    private final Containers containers;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Movements(JdbcClient jdbc, Containers containers, ApplicationEventPublisher events, Clock clock) {
        this.jdbc = jdbc;
        this.containers = containers;
        this.events = events;
        this.clock = clock;
    }

    @Transactional
    public Moving record(NewMovement movement, Caller by) {
        if (!containers.lock(movement.containerId())) {
            return new Moving.UnknownContainer();
        }
        var recorded = placeAt(movement.containerId(), movement.occurredAt());
        var stated = movement.fromSite();
        if (stated != null && recorded.isPresent() && !recorded.get().equals(stated)) {
            return new Moving.Disputed(recorded.get(), stated);
        }
        var id = Ids.next();
        append(id, movement, stated == null ? recorded.orElse(null) : stated, by.id());
        boolean moved = place(id, movement);
        events.publishEvent(new ContainerMoved(movement.containerId(), movement.occurredAt()));
        return new Moving.Recorded(id, moved);
    }

    /** Where the movements known so far had the container at that time. */
    public Optional<UUID> placeAt(UUID container, Instant at) {
        return jdbc.sql("""
                select to_site_id from filed_movement where container_id = ? and occurred_at <= ?
                order by occurred_at desc, recorded_at desc, id desc limit 1""")
                .params(container, utc(at)).query(UUID.class).optional();
    }

    private void append(UUID id, NewMovement movement, @Nullable UUID from, UUID by) {
        jdbc.sql("""
                insert into movement (id, container_id, from_site_id, to_site_id, occurred_at, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?)""")
                .params(id, movement.containerId(), from, movement.toSite(), utc(movement.occurredAt()),
                        utc(clock.instant()), by)
                .update();
    }

    private boolean place(UUID id, NewMovement movement) {
        return jdbc.sql("""
                insert into placement (container_id, site_id, movement_id, since) values (?, ?, ?, ?)
                on conflict (container_id) do update
                  set site_id = excluded.site_id, movement_id = excluded.movement_id, since = excluded.since
                  where placement.since <= excluded.since""")
                .params(movement.containerId(), movement.toSite(), id, utc(movement.occurredAt())).update() == 1;
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
                row.getObject("occurred_at", OffsetDateTime.class).toInstant(),
                row.getObject("recorded_at", OffsetDateTime.class).toInstant());
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
