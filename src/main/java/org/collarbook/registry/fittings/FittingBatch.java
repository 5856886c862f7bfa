package org.collarbook.registry.fittings;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.BulkCopy;
import org.collarbook.platform.Ids;
import org.collarbook.registry.fittings.Part.Fitted;
import org.collarbook.registry.fittings.Part.Removal;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** The parts and the stops that a ledger tells of, many at a time; publishes no events. */
@Component
@Transactional(propagation = Propagation.MANDATORY)
public class FittingBatch {

    /** {@code known}: the part on record that was taken out; null is one that is new. */
    public record PartLine(UUID containerId, Fitted fitted, @Nullable Removal removal, @Nullable UUID known) {}

    /** {@code returnedOn} is null while it is out of service. */
    public record StopLine(UUID containerId, LocalDate since, String reason, @Nullable LocalDate returnedOn,
            @Nullable String note) {}

    private record Row<T>(UUID id, T line) {}

    private final JdbcClient jdbc;
    private final BulkCopy copy;
    private final Clock clock;

    FittingBatch(JdbcClient jdbc, BulkCopy copy, Clock clock) {
        this.jdbc = jdbc;
        this.copy = copy;
        this.clock = clock;
    }

    public Map<UUID, List<Part>> parts(Collection<UUID> containers) {
        return jdbc.sql(Parts.SELECT + "where p.container_id = any (?)").param(containers.toArray(UUID[]::new))
                .query(Parts::read).list().stream().collect(Collectors.groupingBy(Part::containerId));
    }

    public Map<UUID, List<Stop>> stops(Collection<UUID> containers) {
        return jdbc.sql(Stops.SELECT + "where o.container_id = any (?)").param(containers.toArray(UUID[]::new))
                .query(Stops::read).list().stream().collect(Collectors.groupingBy(Stop::containerId));
    }

    public void addParts(List<PartLine> lines, UUID by) {
        var now = clock.instant();
        var rows = lines.stream().map(line -> new Row<>(line.known == null ? Ids.next() : line.known, line)).toList();
        copy.into("part (id, container_id, kind, maker, model, serial, manufactured, fitted_on, labelled_for,"
                + " recorded_at, recorded_by)", rows.stream().filter(row -> row.line.known == null).toList(), row -> {
                    var part = row.line.fitted;
                    return new @Nullable Object[]{row.id, row.line.containerId, part.kind(), part.maker(), part.model(),
                            part.serial(), part.manufactured() == null ? null : part.manufactured().atDay(1),
                            part.fittedOn(), part.labelledFor(), now, by};
                });
        var removed = new ArrayList<Row<Removal>>();
        rows.forEach(row -> {
            if (row.line.removal != null) {
                removed.add(new Row<>(row.id, row.line.removal));
            }
        });
        copy.into("part_removal (part_id, removed_on, reason, for_good, recorded_at, recorded_by)", removed,
                row -> new @Nullable Object[]{row.id, row.line.removedOn(), row.line.reason(), row.line.forGood(), now,
                        by});
    }

    public void addStops(List<StopLine> lines, UUID by) {
        var now = clock.instant();
        var rows = lines.stream().map(line -> new Row<>(Ids.next(), line)).toList();
        copy.into("out_of_service (id, container_id, since, reason, recorded_at, recorded_by)", rows,
                row -> new @Nullable Object[]{row.id, row.line.containerId, row.line.since, row.line.reason, now, by});
        copy.into("return_to_service (out_of_service_id, returned_on, note, recorded_at, recorded_by)",
                rows.stream().filter(row -> row.line.returnedOn != null).toList(),
                row -> new @Nullable Object[]{row.id, row.line.returnedOn, row.line.note, now, by});
    }
}
