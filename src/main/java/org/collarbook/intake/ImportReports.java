package org.collarbook.intake;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.intake.ImportReport.Declared;
import org.collarbook.intake.ImportReport.LineProblem;
import org.collarbook.intake.ImportReport.ReadBy;
import org.collarbook.intake.ImportReport.Rows;
import org.collarbook.intake.ImportReport.State;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads what became of ledgers and of their lines. */
@Component
class ImportReports {

    private static final int FIRST_PROBLEMS = 20;

    private static final String REPORT = """
            select i.*, d.declared_by, d.declared_on from ledger_import i
            left join declaration d on d.id = i.declaration_id where i.id = ?""";

    private static final String PROBLEMS = "select line, column_name, code, refuses, found, accepted"
            + " from ledger_import_problem where import_id = ? and pass = ? ";

    /** Runs of lines opened out again, from the run on that the page starts in. */
    private static final String LINES = """
            select l.line, o.outcome from ledger_import_outcome o
            cross join lateral generate_series(greatest(o.first_line, :after + 1),
                least(o.last_line, greatest(o.first_line, :after + 1) + :most)) as l (line)
            where o.import_id = :id and o.pass = :pass and o.last_line > :after
              and o.first_line >= coalesce((select max(p.first_line) from ledger_import_outcome p
                where p.import_id = :id and p.pass = :pass and p.first_line <= :after + 1), 0)
              and (cast(:outcome as text) is null or o.outcome = :outcome)
            order by o.first_line, l.line limit :most""";

    /** One row of the ledger by the line it starts on. */
    record LedgerLine(long line, Line.Outcome outcome, List<LineProblem> problems) {}

    private final JdbcClient jdbc;

    ImportReports(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<ImportReport> find(UUID id) {
        return read(id, "");
    }

    /** The same, held against other commits until the transaction ends. */
    Optional<ImportReport> lock(UUID id) {
        return read(id, " for update of i");
    }

    private Optional<ImportReport> read(UUID id, String locked) {
        return jdbc.sql(REPORT + locked).param(id).query((row, n) -> report(row)).optional()
                .map(report -> report.with(jdbc.sql(PROBLEMS + "order by line, number limit " + FIRST_PROBLEMS)
                        .params(id, report.latestPass().name()).query((row, n) -> problem(row)).list()));
    }

    Page<LedgerLine> lines(ImportReport of, Line.@Nullable Outcome outcome, long after, PageSize size) {
        var lines = jdbc.sql(LINES).param("id", of.id()).param("pass", of.latestPass().name()).param("after", after)
                .param("outcome", outcome == null ? null : outcome.name()).param("most", size.limit())
                .query((row, n) -> new LedgerLine(row.getLong(1), Line.Outcome.valueOf(row.getString(2)),
                        new ArrayList<>()))
                .list();
        var page = Page.of(lines, size, line -> Cursor.after(line.line()));
        addProblems(of, page.items());
        return page;
    }

    private void addProblems(ImportReport of, List<LedgerLine> lines) {
        if (lines.isEmpty()) {
            return;
        }
        var byLine = new HashMap<Long, List<LineProblem>>();
        lines.forEach(line -> byLine.put(line.line(), line.problems()));
        jdbc.sql(PROBLEMS + "and line between ? and ? order by line, number")
                .params(of.id(), of.latestPass().name(), lines.getFirst().line(), lines.getLast().line())
                .query((row, n) -> problem(row)).list().forEach(problem -> {
                    var on = byLine.get(problem.line());
                    if (on != null) {
                        on.add(problem);
                    }
                });
    }

    private static LineProblem problem(ResultSet row) throws SQLException {
        return new LineProblem(row.getLong("line"), row.getString("column_name"), row.getString("code"),
                row.getBoolean("refuses"), row.getString("found"), row.getString("accepted"));
    }

    private static ImportReport report(ResultSet row) throws SQLException {
        var declaration = row.getObject("declaration_id", UUID.class);
        return new ImportReport(row.getObject("id", UUID.class), State.valueOf(row.getString("state")),
                row.getString("file_name"), row.getString("sha256"), row.getLong("bytes"),
                new Rows(row.getLong("rows_read"), row.getLong("rows_new"), row.getLong("rows_changed"),
                        row.getLong("rows_unchanged"), row.getLong("rows_refused")),
                List.of(), declaration == null
                        ? null
                        : new Declared(declaration, row.getString("declared_by"),
                                row.getObject("declared_on", LocalDate.class)),
                row.getString("sheet"), row.getString("column_map_name") == null
                        ? null
                        : new ReadBy(row.getString("column_map_name"), row.getInt("column_map_version")),
                row.getString("rule_book_hash"), row.getObject("created_at", OffsetDateTime.class).toInstant(),
                instant(row), row.getInt("version"));
    }

    private static @Nullable Instant instant(ResultSet row) throws SQLException {
        var at = row.getObject("committed_at", OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }
}
