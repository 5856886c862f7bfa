package org.collarbook.intake;

import java.util.List;
import java.util.UUID;

import org.springframework.jdbc.core.simple.JdbcClient;

/** What the check foretold of the rows of a ledger, of which a commit tells where something came in between. */
record Foretold(JdbcClient jdbc, UUID importId) {

    /** The run of rows that the first line is in, and those that begin up to the last line. */
    private static final String RUNS = """
            with checked as (select id from ledger_pass where import_id = :import and purpose = 'CHECK'
                and status = 'DONE' order by number desc limit 1)
            select o.first_line, o.last_line, o.outcome from ledger_import_outcome o
            where o.pass_id = (select id from checked) and o.first_line <= :last
              and o.first_line >= coalesce((select max(b.first_line) from ledger_import_outcome b
                where b.pass_id = (select id from checked) and b.first_line <= :first), 0)
              and o.outcome in ('NEW', 'UNCHANGED') order by o.first_line""";

    private record Run(long firstLine, long lastLine, Line.Outcome outcome) {}

    /** Remarks on rows that change a container, of which the check said otherwise. */
    void tellWhatCameBetween(List<Line> lines) {
        var changed = lines.stream().filter(line -> line.outcome() == Line.Outcome.CHANGED).toList();
        if (changed.isEmpty()) {
            return;
        }
        var runs = jdbc.sql(RUNS).param("import", importId).param("first", changed.getFirst().number())
                .param("last", changed.getLast().number()).query(Run.class).list().iterator();
        var run = runs.hasNext() ? runs.next() : null;
        for (var line : changed) {
            while (run != null && run.lastLine < line.number()) {
                run = runs.hasNext() ? runs.next() : null;
            }
            if (run != null && run.firstLine <= line.number()) {
                line.problems().remark(LedgerColumn.SERIAL, "CHANGED_SINCE_CHECK", run.outcome.name(), "a look at the"
                        + " container: it was stored or changed after the check, and the row goes over that");
            }
        }
    }
}
