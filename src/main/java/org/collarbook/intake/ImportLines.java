package org.collarbook.intake;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.UUID;

import org.collarbook.intake.ImportReport.LineProblem;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads what became of the lines of ledgers. */
@Component
class ImportLines {

    static final String PROBLEMS = "select line, column_name, code, refuses, found, accepted"
            + " from ledger_import_problem where pass_id = ? ";

    /** Runs of lines opened out again, from the run on that the page starts in. */
    private static final String LINES = """
            select l.line, o.outcome from ledger_import_outcome o
            cross join lateral generate_series(greatest(o.first_line, :after + 1),
                least(o.last_line, greatest(o.first_line, :after + 1) + :most)) as l (line)
            where o.pass_id = :pass and o.last_line > :after
              and o.first_line >= coalesce((select max(p.first_line) from ledger_import_outcome p
                where p.pass_id = :pass and p.first_line <= :after + 1), 0)
              and o.outcome = any (:outcomes)
            order by o.first_line, l.line limit :most""";

    /** One row of the ledger by the line it starts on. */
    record LedgerLine(long line, Line.Outcome outcome, List<LineProblem> problems) {}

    private final JdbcClient jdbc;

    ImportLines(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** An empty list of a ledger that is not checked would read as if no line had a problem. */
    static UUID told(ImportReport report) {
        var pass = report.toldPass();
        if (pass == null) {
            throw Problem.conflict("IMPORT_NOT_CHECKED", "This import is " + report.state()
                    + ": what becomes of its lines is told once it is CHECKED.").asException();
        }
        return pass;
    }

    Page<LedgerLine> page(UUID pass, Collection<Line.Outcome> outcomes, long after, PageSize size) {
        var lines = jdbc.sql(LINES).param("pass", pass).param("after", after)
                .param("outcomes", outcomes.stream().map(Enum::name).toArray(String[]::new))
                .param("most", size.limit())
                .query((row, n) -> new LedgerLine(row.getLong(1), Line.Outcome.valueOf(row.getString(2)),
                        new ArrayList<>()))
                .list();
        var page = Page.of(lines, size, line -> Cursor.after(line.line()));
        addProblems(pass, page.items());
        return page;
    }

    private void addProblems(UUID pass, List<LedgerLine> lines) {
        if (lines.isEmpty()) {
            return;
        }
        var byLine = new HashMap<Long, List<LineProblem>>();
        lines.forEach(line -> byLine.put(line.line(), line.problems()));
        jdbc.sql(PROBLEMS + "and line between ? and ? order by line, number")
                .params(pass, lines.getFirst().line(), lines.getLast().line()).query(ImportLines::problem).list()
                .forEach(problem -> {
                    var on = byLine.get(problem.line());
                    if (on != null) {
                        on.add(problem);
                    }
                });
    }

    static LineProblem problem(ResultSet row, int number) throws SQLException {
        return new LineProblem(row.getLong("line"), row.getString("column_name"), row.getString("code"),
                row.getBoolean("refuses"), row.getString("found"), row.getString("accepted"));
    }
}
