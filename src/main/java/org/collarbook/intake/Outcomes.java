package org.collarbook.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.intake.LedgerPasses.Pass;
import org.collarbook.platform.BulkCopy;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what became of every row: runs of rows that start on consecutive lines and share an outcome, and each problem by
 * itself. Counts on from what an earlier attempt has stored.
 */
final class Outcomes {

    private record Run(long first, long last, Line.Outcome outcome) {}

    private record Found(long line, int number, LedgerProblem problem) {}

    private final BulkCopy copy;
    private final UUID pass;
    private final Map<Line.Outcome, Long> counts = new EnumMap<>(Line.Outcome.class);
    private final List<Run> runs = new ArrayList<>();
    private final List<Found> problems = new ArrayList<>();
    private @Nullable Run open;
    private @Nullable Long through;

    Outcomes(BulkCopy copy, Pass pass) {
        this.copy = copy;
        this.pass = pass.id();
        var stored = pass.counts();
        counts.put(Line.Outcome.NEW, stored.fresh());
        counts.put(Line.Outcome.CHANGED, stored.changed());
        counts.put(Line.Outcome.UNCHANGED, stored.unchanged());
        counts.put(Line.Outcome.REFUSED, stored.refused());
        counts.put(Line.Outcome.AMBIGUOUS, stored.ambiguous());
        through = pass.throughLine();
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
        writeClosed();
    }

    private void extend(long line, Line.Outcome outcome) {
        through = line;
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

    Counts counts() {
        return new Counts(counts.values().stream().mapToLong(Long::longValue).sum(), of(Line.Outcome.NEW),
                of(Line.Outcome.CHANGED), of(Line.Outcome.UNCHANGED), of(Line.Outcome.REFUSED),
                of(Line.Outcome.AMBIGUOUS));
    }

    /** The line that the last row starts on. */
    @Nullable
    Long through() {
        return through;
    }

    private long of(Line.Outcome outcome) {
        return counts.getOrDefault(outcome, 0L);
    }

    /** All of it, before the transaction ends. */
    void write() {
        if (open != null) {
            runs.add(open);
            open = null;
        }
        writeClosed();
    }

    private void writeClosed() {
        if (!runs.isEmpty()) {
            copy.into("ledger_import_outcome (pass_id, first_line, last_line, outcome)", runs,
                    run -> new @Nullable Object[]{pass, run.first, run.last, run.outcome});
            runs.clear();
        }
        if (!problems.isEmpty()) {
            copy.into("ledger_import_problem (pass_id, line, number, refuses, column_name, code, found, accepted)",
                    problems, this::values);
            problems.clear();
        }
    }

    private @Nullable Object[] values(Found found) {
        var problem = found.problem;
        return new @Nullable Object[]{pass, found.line, found.number, problem.refuses(), problem.column(),
                problem.code(), problem.found(), problem.accepted()};
    }
}
