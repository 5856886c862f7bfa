package org.collarbook.intake;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.intake.ImportReport.Declared;
import org.collarbook.intake.ImportReport.Failure;
import org.collarbook.intake.ImportReport.LineProblem;
import org.collarbook.intake.ImportReport.Progress;
import org.collarbook.intake.ImportReport.ReadBy;
import org.collarbook.intake.ImportReport.Rows;
import org.collarbook.intake.ImportReport.State;
import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.collarbook.platform.jobs.JobStatus;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads how far ledgers are and what became of them. */
@Component
class ImportReports {

    private static final int FIRST_PROBLEMS = 20;

    /**
     * {@code l} is the latest pass, {@code t} the one that is told of: the latest that stored something and is over. The
     * version is that of the passes: one is queued, and one is over.
     */
    private static final String REPORT = """
            select i.*, coalesce(i.text_bytes, i.bytes) as of_bytes, d.declared_by, d.declared_on, l.id as latest, l.purpose, l.status, l.attempt, l.rows_passed,
                l.bytes_passed, l.failure_code, l.failure, l.finished_at,
                t.id as told, t.purpose as told_purpose, t.rows_read, t.rows_new, t.rows_changed, t.rows_unchanged,
                t.rows_refused, t.rows_ambiguous,
                (select max(p.through_line) from ledger_pass p where p.import_id = i.id and p.purpose = 'COMMIT')
                    as committed_through,
                (select count(*) + count(*) filter (where p.status not in ('QUEUED', 'RUNNING')) from ledger_pass p
                    where p.import_id = i.id) as version
            from ledger_import i
            left join declaration d on d.id = i.declaration_id
            join lateral (select * from ledger_pass p where p.import_id = i.id order by p.number desc limit 1) l on true
            left join lateral (select * from ledger_pass p where p.import_id = i.id and (p.status = 'DONE'
                    or p.purpose = 'COMMIT' and p.status in ('FAILED', 'CANCELLED') and p.through_line is not null)
                order by p.number desc limit 1) t on true
            where i.id = ?""";

    private final JdbcClient jdbc;

    ImportReports(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    ImportReport known(UUID id) {
        var report = jdbc.sql(REPORT).param(id).query((row, n) -> report(row)).optional()
                .orElseThrow(() -> Problem.notFound("import").asException());
        return report.toldPass() == null ? report : report.with(firstProblems(report.toldPass()));
    }

    private List<LineProblem> firstProblems(UUID pass) {
        return jdbc.sql(ImportLines.PROBLEMS + "order by line, number limit " + FIRST_PROBLEMS).param(pass)
                .query(ImportLines::problem).list();
    }

    private static ImportReport report(ResultSet row) throws SQLException {
        var pass = Purpose.valueOf(row.getString("purpose"));
        var state = State.of(pass, JobStatus.valueOf(row.getString("status")));
        var code = row.getString("failure_code");
        var told = row.getString("told_purpose");
        return new ImportReport(row.getObject("id", UUID.class), state, pass, row.getString("file_name"),
                row.getString("sha256"), row.getLong("bytes"),
                new Progress(row.getLong("rows_passed"), row.getLong("bytes_passed"),
                        row.getLong("of_bytes"), row.getInt("attempt")),
                code == null ? null : new Failure(code, row.getString("failure")),
                told == null ? null : Purpose.valueOf(told),
                told == null ? null : Rows.from(LedgerPasses.counts(row)),
                row.getObject("committed_through", Long.class), List.of(), declared(row), row.getString("sheet"),
                readBy(row),
                row.getString("rule_book_hash"), StoredMoment.of(row, "created_at"),
                state == State.COMMITTED ? StoredMoment.orNull(row, "finished_at") : null,
                row.getObject("latest", UUID.class),
                row.getObject("told", UUID.class), row.getInt("version"));
    }

    private static @Nullable ReadBy readBy(ResultSet row) throws SQLException {
        var map = row.getString("column_map_name");
        return map == null ? null : new ReadBy(map, row.getInt("column_map_version"));
    }

    private static @Nullable Declared declared(ResultSet row) throws SQLException {
        var declaration = row.getObject("declaration_id", UUID.class);
        return declaration == null
                ? null
                : new Declared(declaration, row.getString("declared_by"),
                        row.getObject("declared_on", LocalDate.class));
    }
}
