package org.collarbook.intake;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import org.collarbook.intake.Imports.OnRefused;
import org.collarbook.intake.LedgerPasses.Pass;
import org.collarbook.platform.Pieces;
import org.collarbook.platform.jobs.Columns;
import org.collarbook.platform.jobs.JobFailure;
import org.collarbook.platform.jobs.JobRun;

/**
 * One walk through a ledger. Check and commit are this same walk over the file with another {@link Sink}, so that the
 * check tells what the commit will do. The other way was to keep a staging copy of every row at the check and write from
 * that: it stores each ledger twice more, and a staged row is as outdated by the time of the commit as a report is.
 *
 * <p>Rows go in batches: each look-up and each write is one statement for all rows of a batch, and nothing is kept from
 * one batch to the next but what {@link Claims} and the check's places keep in tables, and the places met last. An attempt
 * that goes on after another reads the rows stored already and passes over them.
 */
final class LedgerPass implements AutoCloseable {

    static final int BATCH = 2000;

    private final Pass pass;
    private final Pieces file;
    private final LedgerReader reader;
    private final EntryReader entries;
    private final SettleBatch settle;
    private final Outcomes outcomes;
    private final ExecutorService aside = Executors.newSingleThreadExecutor();
    private Future<Judged> next;
    private long passed;

    /** Rows, each judged by itself, and how far into the file they go. */
    private record Judged(List<Line> lines, long passed) {}

    LedgerPass(Pass pass, Terms terms, Pieces file, SettleBatch settle, Outcomes outcomes)
            throws IOException {
        this.pass = pass;
        this.file = file;
        this.reader = new LedgerReader(file, terms.map());
        this.entries = new EntryReader(terms.asOf(), terms.said());
        this.settle = settle;
        this.outcomes = outcomes;
        this.next = judged();
    }

    /**
     * Settles up to so many batches; false when the ledger is at its end. The next batch is read, and judged by itself,
     * while the database is busy with the last one.
     */
    boolean advance(int batches, JobRun job) {
        for (int i = 0; i < batches; i++) {
            var judged = taken(next);
            var batch = judged.lines;
            passed = judged.passed;
            if (batch.isEmpty()) {
                outcomes.write();
                return false;
            }
            next = judged();
            settle.settle(batch);
            outcomes.add(batch);
            if (pass.onRefused() == OnRefused.ABORT) {
                batch.forEach(LedgerPass::requireTaken);
            }
            job.tell(LedgerPasses.passed(outcomes.counts().read(), passed));
        }
        outcomes.write();
        return true;
    }

    /** What is stored once the transaction ends. */
    Columns stored() {
        return LedgerPasses.stored(outcomes.counts(), outcomes.through(), passed);
    }

    private static void requireTaken(Line line) {
        var outcome = line.outcome();
        if (!outcome.isTaken()) {
            throw new JobFailure("ROWS_REFUSED", "The row on line " + line.number() + " is " + outcome + " ("
                    + line.problems().list().getFirst().code()
                    + "), and the commit was of all rows or none. Nothing was"
                    + " stored: mend the rows, or commit with \"refused\":\"SKIP\".");
        }
    }

    private static Judged taken(Future<Judged> judged) {
        try {
            return judged.get();
        } catch (ExecutionException failed) {
            throw failed.getCause() instanceof RuntimeException fault
                    ? fault
                    : new IllegalStateException(failed.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new UncheckedIOException(new InterruptedIOException("the pass was interrupted"));
        }
    }

    private Future<Judged> judged() {
        return aside.submit(() -> {
            var lines = batch().stream().map(row -> new Line(row, entries)).toList();
            return new Judged(lines, file.passed());
        });
    }

    private List<LedgerRow> batch() {
        var stored = pass.throughLine();
        var batch = new ArrayList<LedgerRow>(BATCH);
        while (batch.size() < BATCH) {
            var row = reader.next();
            if (row == null) {
                break;
            }
            if (stored == null || row.line() > stored) {
                batch.add(row);
            }
        }
        return batch;
    }

    @Override
    public void close() throws IOException {
        aside.close();
        reader.close();
    }
}
