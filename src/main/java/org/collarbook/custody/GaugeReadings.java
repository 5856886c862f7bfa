package org.collarbook.custody;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.collarbook.platform.StoredMoment;
import org.collarbook.registry.Containers;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** What the gauges of tanks showed, as facts. They are told and decide nothing: a gauge sticks, and a sender fails. */
@Component
public class GaugeReadings {

    private static final String SELECT = "select id, container_id, percent, gauged_at, gauged_on, source, site_id,"
            + " recorded_at from ";

    private final JdbcClient jdbc;
    private final Containers containers;
    private final Standing standing;
    private final Places places;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    GaugeReadings(JdbcClient jdbc, Containers containers, Standing standing, Places places,
            ApplicationEventPublisher events, Clock clock) {
        this.jdbc = jdbc;
        this.containers = containers;
        this.standing = standing;
        this.places = places;
        this.events = events;
        this.clock = clock;
    }

    /** {@code repeated}: it was delivered before, and nothing was recorded again. */
    public record Recorded(GaugeReading reading, boolean repeated) {}

    /** Refuses by problem a container that has no gauge, or the same moment with another percentage. */
    @Transactional(noRollbackFor = ProblemException.class)
    public Recorded record(UUID container, BigDecimal percent, Instant gaugedAt, ReadingSource source, Caller by) {
        var at = gaugedAt.truncatedTo(ChronoUnit.MICROS);
        if (!containers.lock(container)) {
            throw Problem.invalid("/containerId", "UNKNOWN_CONTAINER", container.toString(), "the id of a container")
                    .asException();
        }
        refuseWithoutGauge(container);
        var before = at(container, at, source);
        if (before.isPresent()) {
            return repeated(before.get(), percent);
        }
        var site = standing.at(container, at).map(Standing.Stood::site).flatMap(places::site);
        var day = LocalDate.ofInstant(at, site.<ZoneId>map(Place::zone).orElse(ZoneOffset.UTC));
        var reading = new GaugeReading(Ids.next(), container, percent, at, day, source,
                site.map(Place::siteId).orElse(null), clock.instant());
        write(reading, by);
        events.publishEvent(new ContainerGauged(container));
        return new Recorded(reading, false);
    }

    private void refuseWithoutGauge(UUID container) {
        var kind = containers.require(container).marks().kind();
        switch (kind) {
            case CARGO_TANK, PORTABLE_TANK, STATIONARY_TANK -> {
                // tanks have one
            }
            case CYLINDER, EXTINGUISHER -> throw Problem.conflict("NOT_FOR_THIS_KIND",
                    "A percent gauge is read on a tank; what is in a cylinder is weighed. Nothing was stored.")
                    .with("kind", kind).asException();
        }
    }

    private static Recorded repeated(GaugeReading before, BigDecimal percent) {
        if (before.percent().compareTo(percent) != 0) {
            throw Problem.conflict("ALREADY_RECORDED", "Another reading of the same moment and source is recorded: "
                    + before.percent().toPlainString() + " percent. Nothing was stored.").with("reading", before.id())
                    .asException();
        }
        return new Recorded(before, true);
    }

    private void write(GaugeReading reading, Caller by) {
        jdbc.sql("""
                insert into reading (id, container_id, percent, gauged_at, gauged_on, source, site_id, recorded_at,
                  recorded_by) values (?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(reading.id(), reading.containerId(), reading.percent(),
                        reading.gaugedAt().atOffset(ZoneOffset.UTC), reading.gaugedOn(), reading.source().name(),
                        reading.siteId(), reading.recordedAt().atOffset(ZoneOffset.UTC), by.id())
                .update();
    }

    /** By the table: what was recorded here once is not recorded again, wherever it counts now. */
    private Optional<GaugeReading> at(UUID container, Instant at, ReadingSource source) {
        return jdbc.sql(SELECT + "reading where container_id = ? and gauged_at = ? and source = ?")
                .params(container, at.atOffset(ZoneOffset.UTC), source.name()).query(GaugeReadings::read).optional();
    }

    /** A container's readings, the latest first; from just before the one given, when one is. */
    public List<GaugeReading> of(UUID container, @Nullable Instant beforeTime, @Nullable UUID beforeId, int atMost) {
        return jdbc.sql(SELECT + """
                filed_reading where container_id = :container
                  and (cast(:time as timestamptz) is null or (gauged_at, id) < (:time, cast(:id as uuid)))
                order by gauged_at desc, id desc limit :most""").param("container", container)
                .param("time", beforeTime == null ? null : beforeTime.atOffset(ZoneOffset.UTC)).param("id", beforeId)
                .param("most", atMost).query(GaugeReadings::read).list();
    }

    private static GaugeReading read(ResultSet row, int number) throws SQLException {
        return new GaugeReading(row.getObject("id", UUID.class), row.getObject("container_id", UUID.class),
                row.getBigDecimal("percent"), StoredMoment.of(row, "gauged_at"),
                row.getObject("gauged_on", LocalDate.class), ReadingSource.valueOf(row.getString("source")),
                row.getObject("site_id", UUID.class), StoredMoment.of(row, "recorded_at"));
    }
}
