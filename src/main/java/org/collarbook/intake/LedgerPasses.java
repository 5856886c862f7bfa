package org.collarbook.intake;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.UUID;

import org.collarbook.intake.Imports.OnRefused;
import org.collarbook.platform.Ids;
import org.collarbook.platform.jobs.Columns;
import org.collarbook.platform.jobs.JobQueue;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The passes over ledgers that were asked for, each a job. A check never waits for a commit: they are two queues. */
@Component
class LedgerPasses {

    /** What a pass is for. */
    enum Purpose {
        CHECK,
        COMMIT
    }

    /** {@code throughLine}: what an earlier attempt has stored, which is what {@code counts} count. */
    record Pass(UUID id, int number, UUID importId, Purpose purpose, @Nullable OnRefused onRefused, UUID requestedBy,
            @Nullable Long throughLine, Counts counts) {

        /** Stored piece by piece, each with a checkpoint; any other pass is one transaction. */
        boolean isInPieces() {
            return onRefused == OnRefused.SKIP;
        }
    }

    private final JdbcClient jdbc;
    private final Clock clock;
    private final JobQueue checks;
    private final JobQueue commits;

    LedgerPasses(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
        this.checks = new JobQueue(jdbc, clock, "ledger_pass", "purpose = 'CHECK'", Columns.NONE);
        this.commits = new JobQueue(jdbc, clock, "ledger_pass", "purpose = 'COMMIT'", Columns.NONE);
    }

    JobQueue of(Purpose purpose) {
        return switch (purpose) {
            case CHECK -> checks;
            case COMMIT -> commits;
        };
    }

    void queue(UUID importId, Purpose purpose, @Nullable OnRefused onRefused, UUID by) {
        jdbc.sql("""
                insert into ledger_pass (id, import_id, purpose, on_refused, requested_at, requested_by)
                values (?, ?, ?, ?, ?, ?)""")
                .params(Ids.next(), importId, purpose.name(), onRefused == null ? null : onRefused.name(),
                        clock.instant().atOffset(ZoneOffset.UTC), by)
                .update();
    }

    Pass find(UUID id) {
        return jdbc.sql("select * from ledger_pass where id = ?").param(id).query((row, n) -> pass(row)).single();
    }

    static Columns passed(long rows, long bytes) {
        return Columns.set("rows_passed = ?, bytes_passed = ?", rows, bytes);
    }

    static Columns stored(Counts counts, @Nullable Long throughLine, long bytes) {
        return Columns.set("""
                through_line = ?, rows_read = ?, rows_new = ?, rows_changed = ?, rows_unchanged = ?, rows_refused = ?,
                rows_ambiguous = ?, rows_passed = ?, bytes_passed = ?""", throughLine, counts.read(), counts.fresh(),
                counts.changed(), counts.unchanged(), counts.refused(), counts.ambiguous(), counts.read(), bytes);
    }

    static Counts counts(ResultSet row) throws SQLException {
        return new Counts(row.getLong("rows_read"), row.getLong("rows_new"), row.getLong("rows_changed"),
                row.getLong("rows_unchanged"), row.getLong("rows_refused"), row.getLong("rows_ambiguous"));
    }

    private static Pass pass(ResultSet row) throws SQLException {
        var onRefused = row.getString("on_refused");
        return new Pass(row.getObject("id", UUID.class), row.getInt("number"), row.getObject("import_id", UUID.class),
                Purpose.valueOf(row.getString("purpose")), onRefused == null ? null : OnRefused.valueOf(onRefused),
                row.getObject("requested_by", UUID.class), row.getObject("through_line", Long.class), counts(row));
    }
}
