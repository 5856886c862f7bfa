package org.collarbook.registry.fittings;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.List;
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
import org.collarbook.regulation.Fittings;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The parts of containers as facts: one is fitted once, and taken out once. */
@Component
public class Parts {

    static final String SELECT = """
            select p.*, r.removed_on, r.reason, r.for_good
            from filed_part p left join part_removal r on r.part_id = p.id\s""";

    private final Containers containers;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Parts(Containers containers, JdbcClient jdbc, ApplicationEventPublisher events, Clock clock) {
        this.containers = containers;
        this.jdbc = jdbc;
        this.events = events;
        this.clock = clock;
    }

    /** Refuses by problem; what the part replaces is taken out on the same day. */
    @Transactional
    Part fit(UUID container, Part.Fitted fitted, @Nullable UUID replaced, Caller by) {
        refuseImpossible(container, fitted);
        if (replaced != null) {
            remove(container, replaced, new Part.Removal(fitted.fittedOn(), "replaced", false), "/replaces", by);
        }
        var id = Ids.next();
        var made = fitted.manufactured();
        int stored = jdbc.sql("""
                insert into part (id, container_id, kind, maker, model, serial, manufactured, fitted_on, labelled_for,
                    recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict on constraint part_once do nothing""")
                .params(id, container, fitted.kind().name(), fitted.maker(), fitted.model(), fitted.serial(),
                        made == null ? null : made.atDay(1), fitted.fittedOn(),
                        fitted.labelledFor() == null ? null : fitted.labelledFor().name(), now(), by.id())
                .update();
        if (stored == 0) {
            throw Problem.conflict("ALREADY_RECORDED", "This part is recorded already; the serial number or the place"
                    + " of a second one that is alike goes into serial. Nothing was stored.").asException();
        }
        events.publishEvent(new ContainerChanged(container));
        return find(container, id).orElseThrow();
    }

    @Transactional
    Part remove(UUID container, UUID id, Part.Removal removal, Caller by) {
        containers.lockKnown(container);
        remove(container, id, removal, "", by);
        events.publishEvent(new ContainerChanged(container));
        return find(container, id).orElseThrow();
    }

    private void refuseImpossible(UUID container, Part.Fitted fitted) {
        containers.lockKnown(container);
        var marks = containers.find(container).orElseThrow().marks();
        var made = marks.manufactured();
        if (made != null && fitted.fittedOn().isBefore(made.value().atDay(1))) {
            throw Problem.invalid("/fittedOn", "BEFORE_MANUFACTURE", fitted.fittedOn().toString(),
                    "not before the original test in " + made.value()).asException();
        }
        if (marks.kind() != ContainerKind.CYLINDER && (fitted.kind() == PartKind.EXEMPTION_LABEL
                || fitted.kind() == PartKind.OVERFILL_PREVENTION_DEVICE)) {
            throw Problem.invalid("/kind", "NOT_FOR_THIS_KIND", fitted.kind().name(), "a cylinder; this is a "
                    + marks.kind()).asException();
        }
    }

    private void remove(UUID container, UUID id, Part.Removal removal, String pointer, Caller by) {
        var part = find(container, id).orElseThrow(() -> pointer.isEmpty()
                ? Problem.notFound("part").asException()
                : Problem.invalid(pointer, "UNKNOWN_PART", id.toString(), "a part of this container").asException());
        if (part.removal() != null) {
            throw Problem.conflict("ALREADY_REMOVED", "This part was taken out on " + part.removal().removedOn()
                    + ". Nothing was stored.").asException();
        }
        if (removal.removedOn().isBefore(part.fitted().fittedOn())) {
            throw Problem.invalid(pointer.isEmpty() ? "/removedOn" : "/fittedOn", "BEFORE_FITTED", removal.removedOn()
                    .toString(), "not before it was fitted on " + part.fitted().fittedOn()).asException();
        }
        jdbc.sql("""
                insert into part_removal (part_id, removed_on, reason, for_good, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?)""").params(id, removal.removedOn(), removal.reason(), removal.forGood(),
                now(), by.id()).update();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private Optional<Part> find(UUID container, UUID id) {
        return jdbc.sql(SELECT + "where p.container_id = ? and p.id = ?").params(container, id).query(Parts::read)
                .optional();
    }

    /** Those in place and those taken out, the latest recorded first. */
    public List<Part> of(UUID container, @Nullable UUID before, PageSize size) {
        return jdbc.sql(SELECT + """
                where p.container_id = :container
                  and p.id < coalesce(:before::uuid, 'ffffffff-ffff-ffff-ffff-ffffffffffff')
                order by p.id desc limit :most""").param("container", container).param("before", before)
                .param("most", size.limit()).query(Parts::read).list();
    }

    static Part read(ResultSet row, int number) throws SQLException {
        var made = row.getObject("manufactured", LocalDate.class);
        var label = row.getString("labelled_for");
        var removedOn = row.getObject("removed_on", LocalDate.class);
        return new Part(row.getObject("id", UUID.class), row.getObject("container_id", UUID.class),
                new Part.Fitted(PartKind.valueOf(row.getString("kind")), row.getString("maker"),
                        row.getString("model"), row.getString("serial"), made == null ? null : YearMonth.from(made),
                        row.getObject("fitted_on", LocalDate.class),
                        label == null ? null : Fittings.Label.valueOf(label)),
                removedOn == null
                        ? null
                        : new Part.Removal(removedOn, row.getString("reason"), row.getBoolean("for_good")),
                StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class));
    }
}
