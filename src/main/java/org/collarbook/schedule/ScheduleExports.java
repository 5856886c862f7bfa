package org.collarbook.schedule;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.collarbook.platform.jobs.Claim;
import org.collarbook.platform.jobs.Columns;
import org.collarbook.platform.jobs.JobQueue;
import org.collarbook.platform.jobs.JobStatus;
import org.collarbook.schedule.ScheduleExport.Failure;
import org.collarbook.schedule.ScheduleExport.Manifest;
import org.collarbook.schedule.ScheduleExport.Progress;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

import tools.jackson.databind.json.JsonMapper;

/** The exports that were asked for, and what their callers do with them. */
@Component
class ScheduleExports {

    private static final String SELECT = "select e.* from schedule_export e ";
    private static final String KEPT = SELECT + "where e.status = 'DONE' and e.keys_deleted_at is null and ";

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;
    private final Duration filesKept;
    private final Duration keysKept;
    private final JobQueue queue;

    ScheduleExports(JdbcClient jdbc, JsonMapper json, Clock clock,
            @Value("${collarbook.exports.kept:P7D}") Duration filesKept,
            @Value("${collarbook.exports.keys-kept:P400D}") Duration keysKept) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
        this.filesKept = filesKept;
        this.keysKept = keysKept;
        this.queue = new JobQueue(jdbc, clock, "schedule_export", written(0, 0));
    }

    JobQueue jobs() {
        return queue;
    }

    static Columns written(long rows, long replayed) {
        return Columns.set("rows_written = ?, containers_replayed = ?", rows, replayed);
    }

    ScheduleExport queue(ExportAsked asked, Caller caller) {
        var id = Ids.next();
        jdbc.sql("insert into schedule_export (id, requested_at, requested_by, asked, since_id)"
                + " values (?, ?, ?, cast(? as jsonb), ?)")
                .params(id, now(), caller.id(), json.writeValueAsString(asked), asked.since()).update();
        return known(id);
    }

    ScheduleExport known(UUID id) {
        return jdbc.sql(SELECT + "where e.id = ?").param(id).query(this::read).optional()
                .orElseThrow(() -> Problem.notFound("schedule export").asException());
    }

    /** One whose rows are still known, for another to tell what has changed since. */
    Optional<ScheduleExport> base(UUID id) {
        return jdbc.sql(KEPT + "e.id = ?").param(id).query(this::read).optional();
    }

    Optional<ScheduleExport> base(Instant snapshotAt, ScheduleQuestion filter) {
        return jdbc.sql(KEPT + "e.snapshot_at = ? order by e.number desc").param(snapshotAt.atOffset(ZoneOffset.UTC))
                .query(this::read).list().stream()
                .filter(one -> one.asked().filter().equals(filter) && !one.isReplayed()).findFirst();
    }

    List<ScheduleExport> page(@Nullable Long before, PageSize size) {
        return jdbc.sql(SELECT + "where e.number < ? order by e.number desc limit ?")
                .params(before == null ? Long.MAX_VALUE : before, size.limit()).query(this::read).list();
    }

    @Transactional
    ScheduleExport cancel(UUID id) {
        boolean cancelled = queue.cancel(id);
        var export = known(id);
        if (!cancelled) {
            throw Problem.conflict("EXPORT_IS_OVER", "Export " + export.number() + " is " + export.status()
                    + ": only one that is not yet made can be cancelled.").asException();
        }
        return export;
    }

    /** False when it was cancelled or is another's by now. */
    boolean finish(Claim claim, Manifest manifest, long rows, long replayed) {
        var now = clock.instant();
        return queue.finish(claim, Columns.set("""
                snapshot_at = ?, manifest = cast(? as jsonb), expires_at = ?, keys_expire_at = ?, rows_written = ?,
                containers_replayed = ?""", manifest.snapshotAt().atOffset(ZoneOffset.UTC),
                json.writeValueAsString(manifest), now.plus(filesKept).atOffset(ZoneOffset.UTC),
                now.plus(keysKept).atOffset(ZoneOffset.UTC), rows, replayed));
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private ScheduleExport read(ResultSet row, int number) throws SQLException {
        var code = row.getString("failure_code");
        var manifest = row.getString("manifest");
        return new ScheduleExport(row.getObject("id", UUID.class), row.getInt("number"),
                JobStatus.valueOf(row.getString("status")),
                StoredMoment.of(row, "requested_at"),
                row.getObject("requested_by", UUID.class), json.readValue(row.getString("asked"), ExportAsked.class),
                new Progress(row.getLong("rows_written"), row.getLong("containers_replayed"), row.getInt("attempt")),
                StoredMoment.orNull(row, "started_at"), StoredMoment.orNull(row, "finished_at"),
                code == null ? null : new Failure(code, row.getString("failure")),
                StoredMoment.orNull(row, "expires_at"),
                StoredMoment.orNull(row, "keys_expire_at"), StoredMoment.orNull(row, "files_deleted_at") != null,
                manifest == null ? null : json.readValue(manifest, Manifest.class));
    }
}
