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
import org.collarbook.registry.Containers;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Repairs of 4-series cylinders, 49 CFR 180.211. No sentence there resets the due date: it follows the requalification
 * that a rebuilding or reheat treatment includes, which is a record of its own.
 */
@Component
public class Repairs {

    /** 49 CFR 180.215: at least so long. */
    private static final int YEARS_KEPT = 15;

    private static final String SELECT = """
            select id, container_id, performed_on, kind, seams, requalifier_name, rin, approved_from, approval_expires,
                work, marks_transferred, certification, keep_until, recorded_at, recorded_by
            from filed_repair\s""";

    private final Containers containers;
    private final Requalifiers requalifiers;
    private final RecordRequalification recording;
    private final JdbcClient jdbc;
    private final Clock clock;

    Repairs(Containers containers, Requalifiers requalifiers, RecordRequalification recording, JdbcClient jdbc,
            Clock clock) {
        this.containers = containers;
        this.requalifiers = requalifiers;
        this.recording = recording;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Refuses by problem; a refused repair leaves no trace. */
    @Transactional
    public Repair record(UUID container, Done done, Caller by) {
        if (!containers.lock(container)) {
            throw Problem.notFound("container").asException();
        }
        recording.refuseCondemned(container);
        var refusals = new Refusals();
        var marked = Marked.from(containers.find(container).orElseThrow().marks());
        recording.refuseWrongDay(container, done.performedOn(), marked, refusals);
        refuseForbidden(done, marked, refusals);
        var facility = requalifiers.approved(done.rin(), done.performedOn(), refusals);
        refusals.done();
        if (facility == null) {
            throw new IllegalStateException("a facility was neither found nor refused");
        }
        return write(container, done, facility, by);
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

    private Repair write(UUID container, Done done, Requalifier facility, Caller by) {
        var id = Ids.next();
        var approval = facility.approval();
        int stored = jdbc.sql("""
                insert into repair (id, container_id, performed_on, kind, seams, requalifier_id, requalifier_name, rin,
                    approved_from, approval_expires, work, marks_transferred, certification, keep_until, recorded_at,
                    recorded_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                on conflict do nothing""")
                .params(id, container, done.performedOn(), done.kind().name(),
                        done.seams() == null ? null : done.seams().name(), facility.id(), facility.name(),
                        facility.rin().value(), approval.from(), approval.expires(), done.work(),
                        done.marksTransferred(), done.certification(), done.performedOn().plusYears(YEARS_KEPT),
                        clock.instant().atOffset(ZoneOffset.UTC), by.id())
                .update();
        if (stored == 0) {
            throw Problem.conflict("ALREADY_RECORDED", "This work of " + done.performedOn() + " by " + facility.rin()
                    + " is recorded already. Nothing was stored.").asException();
        }
        return jdbc.sql(SELECT + "where id = ?").param(id).query(Repairs::read).single();
    }

    /** The newest first. */
    public List<Repair> of(UUID container, @Nullable LocalDate day, @Nullable UUID id, PageSize size) {
        return jdbc.sql(SELECT + """
                where container_id = :container
                  and (cast(:day as date) is null or (performed_on, id) < (cast(:day as date), cast(:id as uuid)))
                order by performed_on desc, id desc limit :most""")
                .param("container", container).param("day", day).param("id", id).param("most", size.limit())
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
                row.getObject("keep_until", LocalDate.class),
                row.getObject("recorded_at", OffsetDateTime.class).toInstant(),
                row.getObject("recorded_by", UUID.class));
    }
}
