package org.collarbook.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

import org.collarbook.platform.BulkCopy;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what became of every row: runs of rows that start on consecutive lines and share an outcome, and each problem by
 * itself. Written batch by batch.
 */
final class Outcomes {

    /** How many rows came to what. */
    record Counts(long read, long fresh, long changed, long unchanged, long refused) {}

    private record Run(long first, long last, Line.Outcome outcome) {}

    private record Found(long line, int number, LedgerProblem problem) {}

    private final BulkCopy copy;
    private final Terms terms;
    private final String pass;
    private final Map<Line.Outcome, Long> counts = new EnumMap<>(Line.Outcome.class);
    private final List<Run> runs = new ArrayList<>();
    private final List<Found> problems = new ArrayList<>();
    private @Nullable Run open;

    Outcomes(BulkCopy copy, Terms terms, String pass) {
        this.copy = copy;
        this.terms = terms;
        this.pass = pass;
    }

    void add(List<Line> lines) {
        for (var line : lines) {
            counts.merge(line.outcome(), 1L, Long::sum);
            extend(line.number(), line.outcome());
            int number = 0;
            for (var problem : line.problems().list()) {
                problems.add(new Found(line.number(), number++, problem));
            }
        }
        write();
    }

    private void extend(long line, Line.Outcome outcome) {
        var run = open;
        if (run != null && run.outcome == outcome && run.last == line - 1) {
            open = new Run(run.first, line, outcome);
            return;
        }
        if (run != null) {
            runs.add(run);
        }
        open = new Run(line, line, outcome);
    }

    Counts finish() {
        if (open != null) {
            runs.add(open);
        }
        write();
        return new Counts(counts.values().stream().mapToLong(Long::longValue).sum(), of(Line.Outcome.NEW),
                of(Line.Outcome.CHANGED), of(Line.Outcome.UNCHANGED), of(Line.Outcome.REFUSED));
    }

    private long of(Line.Outcome outcome) {
        return counts.getOrDefault(outcome, 0L);
    }

    private void write() {
        if (!runs.isEmpty()) {
            copy.into("ledger_import_outcome (import_id, pass, first_line, last_line, outcome)", runs,
                    run -> new @Nullable Object[]{terms.importId(), pass, run.first, run.last, run.outcome});
            runs.clear();
        }
        if (!problems.isEmpty()) {
            copy.into("ledger_import_problem (import_id, pass, line, number, refuses, column_name, code, found,"
                    + " accepted)", problems, this::values);
            problems.clear();
        }
    }

    private @Nullable Object[] values(Found found) {
        var problem = found.problem;
        return new @Nullable Object[]{terms.importId(), pass, found.line, found.number, problem.refuses(),
                problem.column(), problem.code(), problem.found(), problem.accepted()};
    }
}
