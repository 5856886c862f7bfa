package org.collarbook.inspection;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.inspection.Repair.Done;
import org.collarbook.inspection.Repair.Kind;
import org.collarbook.inspection.Repair.Seams;
import org.collarbook.inspection.Requalifier.Approval;
import org.collarbook.inspection.Requalifier.Named;
import org.collarbook.inspection.bench.Marked;
import org.collarbook.inspection.bench.Refusals;
import org.collarbook.inspection.bench.Sources;
import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.collarbook.registry.Containers;
import org.collarbook.regulation.Retention;
import org.collarbook.regulation.Retention.RecordKind;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Repairs of 4-series cylinders, 49 CFR 180.211. No sentence there resets the due date: it follows the requalification
 * that a rebuilding or reheat treatment includes, which is a record of its own.
 */
@Component
public class Repairs {

    private static final String SELECT = """
            select r.*, k.id as correction_id, k.replaced_by, k.reason as correction_reason,
                k.recorded_at as corrected_at, k.recorded_by as corrected_by
            from filed_repair r left join repair_correction k on k.corrects = r.id
            """;

    private final Containers containers;
    private final Requalifiers requalifiers;
    private final RecordRequalification recording;
    private final Retention retention;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Repairs(Containers containers, Requalifiers requalifiers, RecordRequalification recording, Retention retention,
            JdbcClient jdbc, ApplicationEventPublisher events, Clock clock) {
        this.events = events;
        this.retention = retention;
        this.containers = containers;
        this.requalifiers = requalifiers;
        this.recording = recording;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Refuses by problem; a refused repair leaves no trace. */
    @Transactional
    public Repair record(UUID container, Done done, Caller by) {
        containers.lockKnown(container);
        return write(container, done, null, "", by);
    }

    /**
     * Another repair takes the place of one that was recorded by mistake, or none ({@code instead} null); the first stays
     * on record. Answers what takes its place, or itself where it is void.
     */
    @Transactional
    public Repair correct(UUID mistaken, @Nullable Done instead, String reason, Caller by) {
        var container = find(mistaken).containerId();
        containers.lock(container);
        // read anew under the lock: a faster correction may have come between
        var corrected = find(mistaken).corrected();
        if (corrected != null) {
            throw corrected.refusal().asException();
        }
        var replacedBy = instead == null ? null : write(container, instead, mistaken, "/record", by).id();
        jdbc.sql("""
                insert into repair_correction (id, corrects, replaced_by, reason, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?)""")
                .params(Ids.next(), mistaken, replacedBy, reason, now(), by.id()).update();
        events.publishEvent(new ContainerRepaired(container));
        return find(replacedBy == null ? mistaken : replacedBy);
    }

    public Repair find(UUID id) {
        return jdbc.sql(SELECT + "where r.id = ?").param(id).query(Repairs::read).optional()
                .orElseThrow(() -> Problem.notFound("repair").asException());
    }

    /** {@code pointer} is where in the request the repair stands. */
    private Repair write(UUID container, Done done, @Nullable UUID corrects, String pointer, Caller by) {
        recording.refuseCondemned(container);
        var refusals = new Refusals(pointer);
        var marked = Marked.from(containers.find(container).orElseThrow().marks());
        recording.refuseWrongDay(container, done.performedOn(), marked, refusals);
        refuseForbidden(done, marked, refusals);
        var facility = requalifiers.approved(done.rin(), done.performedOn(), refusals);
        refusals.done();
        if (facility == null) {
            throw new IllegalStateException("a facility was neither found nor refused");
        }
        refuseDuplicate(container, done, corrects);
        return insert(container, done, facility, by);
    }

    private static void refuseForbidden(Done done, Marked marked, Refusals refusals) {
        if (!marked.isOf4Series()) {
            refusals.refuse("/kind", "NOT_OF_THE_4_SERIES", done.kind(), "a cylinder of the DOT-4 series; this is a "
                    + marked.specification(), Sources.REPAIR);
        }
        if (done.kind() == Kind.REBUILD && done.seams() != Seams.WELDED) {
            refusals.refuse("/seams", done.seams() == null ? "MISSING" : "BRAZED_SEAMS", done.seams(),
                    "WELDED: a cylinder with brazed seams is not rebuilt", Sources.REPAIR);
        }
        if (!done.marksTransferred()) {
            refusals.refuse("/marksTransferred", "MARKS_NOT_TRANSFERRED", "false",
                    "true: all original marks are on it still, or again", Sources.REPAIR);
        }
    }

    private void refuseDuplicate(UUID container, Done done, @Nullable UUID corrects) {
        jdbc.sql(SELECT + """
                where r.container_id = :container and r.performed_on = :day and r.kind = :kind and r.rin = :rin
                  and r.work = :work and k.id is null and r.id is distinct from :corrects""")
                .param("container", container).param("day", done.performedOn()).param("kind", done.kind().name())
                .param("rin", done.rin().value()).param("work", done.work()).param("corrects", corrects)
                .query(Repairs::read).optional().ifPresent(known -> {
                    throw Problem.conflict("ALREADY_RECORDED", "This work of " + done.performedOn() + " by "
                            + done.rin() + " is recorded already. Nothing was stored.").with("repair", known.id())
                            .asException();
                });
    }

    private Repair insert(UUID container, Done done, Requalifier facility, Caller by) {
        var id = Ids.next();
        var approval = facility.approval();
        jdbc.sql("""
                insert into repair (id, container_id, performed_on, kind, seams, requalifier_id, requalifier_name, rin,
                    approved_from, approval_expires, work, marks_transferred, certification, keep_until,
                    recorded_before, recorded_at, recorded_by)
                values (:id, :container, :day, :kind, :seams, :facility, :name, :rin, :from, :expires, :work, :marks,
                    :certification, :keep, (select count(*) from repair where container_id = :container
                      and performed_on = :day and kind = :kind and rin = :rin and work = :work), :at, :by)""")
                .param("id", id).param("container", container).param("day", done.performedOn())
                .param("kind", done.kind().name())
                .param("seams", done.seams() == null ? null : done.seams().name()).param("facility", facility.id())
                .param("name", facility.name()).param("rin", facility.rin().value()).param("from", approval.from())
                .param("expires", approval.expires()).param("work", done.work()).param("marks", done.marksTransferred())
                .param("certification", done.certification())
                .param("keep", retention.keepUntil(RecordKind.REPAIR, done.performedOn())).param("at", now())
                .param("by", by.id())
                .update();
        events.publishEvent(new ContainerRepaired(container));
        return find(id);
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    /** The newest first; what was corrected only when asked for. */
    public List<Repair> of(UUID container, boolean withCorrected, @Nullable LocalDate day, @Nullable UUID id,
            PageSize size) {
        return jdbc.sql(SELECT + """
                where r.container_id = :container and (:all or k.id is null)
                  and (cast(:day as date) is null or (r.performed_on, r.id) < (cast(:day as date), cast(:id as uuid)))
                order by r.performed_on desc, r.id desc limit :most""")
                .param("container", container).param("all", withCorrected).param("day", day).param("id", id)
                .param("most", size.limit())
                .query(Repairs::read).list();
    }

    private static Repair read(ResultSet row, int number) throws SQLException {
        var seams = row.getString("seams");
        var rin = new Rin(row.getString("rin"));
        var done = new Done(row.getObject("performed_on", LocalDate.class), Kind.valueOf(row.getString("kind")),
                seams == null ? null : Seams.valueOf(seams), rin, row.getString("work"),
                row.getBoolean("marks_transferred"), row.getString("certification"));
        return new Repair(row.getObject("id", UUID.class), row.getObject("container_id", UUID.class), done,
                new Named(rin, row.getString("requalifier_name"),
                        new Approval(row.getObject("approved_from", LocalDate.class),
                                row.getObject("approval_expires", LocalDate.class))),
                row.getObject("keep_until", LocalDate.class), Corrected.read(row),
                StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class));
    }
}
