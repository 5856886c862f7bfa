package org.collarbook.registry.fittings;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.collarbook.registry.ContainerChanged;
import org.collarbook.registry.Containers;
import org.collarbook.regulation.ContainerKind;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Tanks taken out of service and put back, as facts. */
@Component
public class Stops {

    static final String SELECT = """
            select o.id, o.container_id, o.since, o.reason, b.returned_on, b.note, o.recorded_at
            from filed_out_of_service o left join return_to_service b on b.out_of_service_id = o.id\s""";

    private final Containers containers;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Stops(Containers containers, JdbcClient jdbc, ApplicationEventPublisher events, Clock clock) {
        this.containers = containers;
        this.jdbc = jdbc;
        this.events = events;
        this.clock = clock;
    }

    /** Those of the containers that are out of service as recorded. */
    public Map<UUID, Stop> standing(Collection<UUID> ids) {
        var standing = new HashMap<UUID, Stop>();
        jdbc.sql(SELECT + "where o.container_id = any (?) and b.out_of_service_id is null")
                .param(ids.toArray(UUID[]::new)).query(Stops::read).list()
                .forEach(stop -> standing.put(stop.containerId(), stop));
        return standing;
    }

    @Transactional
    Stop take(UUID container, LocalDate since, String reason, Caller by) {
        containers.lockKnown(container);
        var marks = containers.find(container).orElseThrow().marks();
        if (marks.kind() == ContainerKind.CYLINDER) {
            throw Problem.conflict("NOT_FOR_THIS_KIND", "A cylinder is held out of service by a hold, which says what"
                    + " lifts it. Nothing was stored.").asException();
        }
        var made = marks.manufactured();
        if (made != null && since.isBefore(made.value().atDay(1))) {
            throw Problem.invalid("/since", "BEFORE_MANUFACTURE", since.toString(),
                    "not before the original test in " + made.value()).asException();
        }
        latest(container).ifPresent(last -> refuseOverlap(last, since));
        var id = Ids.next();
        jdbc.sql("""
                insert into out_of_service (id, container_id, since, reason, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?)""").params(id, container, since, reason, now(), by.id()).update();
        events.publishEvent(new ContainerChanged(container));
        return latest(container).orElseThrow();
    }

    private static void refuseOverlap(Stop last, LocalDate since) {
        var returned = last.returnedOn();
        if (returned == null) {
            throw Problem.conflict("OUT_OF_SERVICE", "It is out of service since " + last.since()
                    + " already. Nothing was stored.").asException();
        }
        if (since.isBefore(returned) || since.equals(last.since())) {
            throw Problem.invalid("/since", "OUT_OF_RANGE", since.toString(), "not before its last return on "
                    + returned + ", and a later day than that on which it was taken out then").asException();
        }
    }

    @Transactional
    Stop putBack(UUID container, LocalDate returnedOn, @Nullable String note, Caller by) {
        containers.lockKnown(container);
        var stop = latest(container).filter(last -> last.returnedOn() == null)
                .orElseThrow(() -> Problem.conflict("NOT_OUT_OF_SERVICE",
                        "It is not recorded to be out of service. Nothing was stored.").asException());
        if (returnedOn.isBefore(stop.since())) {
            throw Problem.invalid("/returnedOn", "OUT_OF_RANGE", returnedOn.toString(),
                    "not before " + stop.since() + ", when it was taken out").asException();
        }
        jdbc.sql("""
                insert into return_to_service (out_of_service_id, returned_on, note, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?)""").params(stop.id(), returnedOn, note, now(), by.id()).update();
        events.publishEvent(new ContainerChanged(container));
        return latest(container).orElseThrow();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private Optional<Stop> latest(UUID container) {
        return jdbc.sql(SELECT + "where o.container_id = ? order by o.since desc limit 1").param(container)
                .query(Stops::read).optional();
    }

    /** The latest recorded first. */
    public List<Stop> of(UUID container, @Nullable UUID before, PageSize size) {
        return jdbc.sql(SELECT + """
                where o.container_id = :container
                  and o.id < coalesce(:before::uuid, 'ffffffff-ffff-ffff-ffff-ffffffffffff')
                order by o.id desc limit :most""").param("container", container).param("before", before)
                .param("most", size.limit()).query(Stops::read).list();
    }

    static Stop read(ResultSet row, int number) throws SQLException {
        return new Stop(row.getObject("id", UUID.class), row.getObject("container_id", UUID.class),
                row.getObject("since", LocalDate.class), row.getString("reason"),
                row.getObject("returned_on", LocalDate.class), row.getString("note"),
                StoredMoment.of(row, "recorded_at"));
    }
}
