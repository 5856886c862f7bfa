package org.collarbook.schedule;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

import org.collarbook.platform.Unhurried;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.ProblemException;
import org.collarbook.platform.jobs.JobFailure;
import org.collarbook.platform.jobs.JobKind;
import org.collarbook.platform.jobs.JobQueue;
import org.collarbook.platform.jobs.JobRun;
import org.collarbook.platform.jobs.NotOurs;
import org.collarbook.regulation.RuleBook;
import org.collarbook.compliance.AsKnown;
import org.collarbook.schedule.ScheduleExport.FileEntry;
import org.collarbook.schedule.ScheduleExport.Manifest;
import org.collarbook.schedule.ScheduleExport.Since;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/** Makes an export that was queued: all its files in one snapshot of the database. */
@Component
class MakeExports implements JobKind {

    private final ScheduleExports exports;
    private final ExportFiles files;
    private final ExportChanges changes;
    private final ExportContent content;
    private final ScheduleQuestions questions;
    private final ReplayedTables replayed;
    private final AsKnown asKnown;
    private final JdbcClient jdbc;
    private final Clock clock;
    private final TransactionTemplate snapshot;

    MakeExports(ScheduleExports exports, ExportFiles files, ExportChanges changes, ExportContent content,
            ScheduleQuestions questions, ReplayedTables replayed, AsKnown asKnown, JdbcClient jdbc, Clock clock,
            PlatformTransactionManager transactions) {
        this.jdbc = jdbc;
        this.exports = exports;
        this.files = files;
        this.changes = changes;
        this.content = content;
        this.questions = questions;
        this.replayed = replayed;
        this.asKnown = asKnown;
        this.clock = clock;
        this.snapshot = new TransactionTemplate(transactions);
        this.snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
    }

    @Override
    public String word() {
        return "Schedule export";
    }

    @Override
    public JobQueue queue() {
        return exports.jobs();
    }

    @Override
    public void run(JobRun job) {
        var export = exports.known(job.claim().id());
        var progress = new Rows(job);
        if (job.claim().attempt() > 1) {
            files.forgetEarlier(job.claim());
        }
        try {
            var manifest = Objects.requireNonNull(snapshot.execute(status -> make(export, job, progress)));
            // a beat has changed the job's row since the snapshot, so it is ended after it
            if (!exports.finish(job.claim(), manifest, progress.rows, progress.replayed)) {
                throw new NotOurs();
            }
        } catch (ProblemException refused) {
            throw new JobFailure(refused.problem().code(), refused.problem().detail());
        }
    }

    /** What is told of while it is made. */
    static final class Rows {

        private final JobRun job;
        private long rows;
        private long replayed;

        Rows(JobRun job) {
            this.job = job;
        }

        void replayed(long containers) {
            replayed = containers;
            job.tell(ScheduleExports.written(rows, replayed));
        }

        void further(long more) {
            rows += more;
            job.tell(ScheduleExports.written(rows, replayed));
        }
    }

    private Manifest make(ScheduleExport export, JobRun job, Rows progress) {
        var asked = export.asked();
        Unhurried.go(jdbc);
        // as exactly as the database keeps it
        var now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        var filter = filter(asked);
        var replay = asked.replay(now);
        if (replay != null) {
            replayed.fill(replay, replayed.ask(filter, replay, Long.MAX_VALUE), progress::replayed);
        }
        var source = replay == null ? Source.stored(now) : Source.replayed(now);
        changes.keep(job.claim(), source, filter);
        var since = since(asked);
        var plan = since == null ? content.schedule(source, filter, replay, asked) : content.changes(asked);
        plan = new ArrayList<>(plan);
        var errors = content.undetermined(source, filter, asked);
        plan.add(errors);
        var written = new ArrayList<FileEntry>();
        for (var file : plan) {
            written.add(files.write(job.claim(), file.name(), file.mediaType(), file.writer()));
            progress.further(written.getLast().rows());
        }
        var book = asKnown.book(replay == null ? now : replay.knownAt());
        return new Manifest(now, export.requestedBy(), asked, since, book.rules().hash(), book.evaluator(), software(),
                errors.name(), List.copyOf(written));
    }

    private ScheduleFilter filter(ExportAsked asked) {
        var wrong = new Inputs();
        var filter = questions.read(asked.filter(), wrong);
        wrong.done();
        return filter;
    }

    private @Nullable Since since(ExportAsked asked) {
        if (asked.since() == null) {
            return null;
        }
        var earlier = exports.base(asked.since()).orElseThrow(() -> new JobFailure("UNKNOWN_EXPORT",
                "The rows of the earlier export are no longer known."));
        return changes.find(earlier.id(), Objects.requireNonNull(earlier.manifest()).snapshotAt());
    }

    /** As the jar's manifest has it; nothing is packed while it is developed. */
    private static String software() {
        var version = RuleBook.class.getPackage().getImplementationVersion();
        return "Collarbook " + (version == null ? "in development" : version);
    }
}
