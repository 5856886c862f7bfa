package org.collarbook.custody;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
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

/** Containers seen standing somewhere, as at a stock count. It moves none: one seen elsewhere than recorded is disputed. */
@Component
public class Sightings {

    private final JdbcClient jdbc;
    private final Containers containers;
    private final Standing standing;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Sightings(JdbcClient jdbc, Containers containers, Standing standing, ApplicationEventPublisher events,
            Clock clock) {
        this.jdbc = jdbc;
        this.containers = containers;
        this.standing = standing;
        this.events = events;
        this.clock = clock;
    }

    /** What became of a sighting handed in. */
    public sealed interface Seeing {

        /** {@code confirms}: the register had it there at that moment. */
        record Recorded(UUID id, boolean confirms) implements Seeing {}

        record UnknownContainer() implements Seeing {}
    }

    @Transactional
    public Seeing record(UUID container, UUID site, Instant seenAt, Caller by) {
        var at = seenAt.truncatedTo(ChronoUnit.MICROS);
        if (!containers.lock(container)) {
            return new Seeing.UnknownContainer();
        }
        var before = standing.now(container);
        var id = Ids.next();
        jdbc.sql("insert into sighting (id, container_id, site_id, occurred_at, recorded_at, recorded_by)"
                + " values (?, ?, ?, ?, ?, ?)")
                .params(id, container, site, at.atOffset(ZoneOffset.UTC), clock.instant().atOffset(ZoneOffset.UTC),
                        by.id())
                .update();
        standing.seen(before, container, site, at);
        events.publishEvent(new ContainerSeen(container, at));
        return new Seeing.Recorded(id, standing.at(before, container, at).map(Standing.Stood::site).filter(site::equals)
                .isPresent());
    }

    /** A container's sightings, the latest first; from just before the one given, when one is. */
    public List<Sighting> of(UUID container, @Nullable Instant beforeTime, @Nullable UUID beforeId, int atMost) {
        return jdbc.sql("""
                select id, container_id, site_id, occurred_at, recorded_at from filed_sighting
                where container_id = :container
                  and (cast(:time as timestamptz) is null or (occurred_at, id) < (:time, cast(:id as uuid)))
                order by occurred_at desc, id desc limit :most""")
                .param("container", container)
                .param("time", beforeTime == null ? null : beforeTime.atOffset(ZoneOffset.UTC)).param("id", beforeId)
                .param("most", atMost).query(Sightings::read).list();
    }

    private static Sighting read(ResultSet row, int number) throws SQLException {
        return new Sighting(row.getObject("id", UUID.class), row.getObject("container_id", UUID.class),
                row.getObject("site_id", UUID.class), StoredMoment.of(row, "occurred_at"),
                StoredMoment.of(row, "recorded_at"));
    }
}
