package org.collarbook.intake;

import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.platform.jobs.JobKind;
import org.collarbook.platform.jobs.JobQueue;
import org.collarbook.platform.jobs.JobRun;
import org.springframework.stereotype.Component;

/** Commits a ledger: loads what its check said would be taken. */
@Component
class CommitLedger implements JobKind {

    private final LedgerPasses passes;
    private final RunPass run;

    CommitLedger(LedgerPasses passes, RunPass run) {
        this.passes = passes;
        this.run = run;
    }

    @Override
    public String word() {
        return "The commit of a ledger";
    }

    @Override
    public JobQueue queue() {
        return passes.of(Purpose.COMMIT);
    }

    @Override
    public void run(JobRun job) {
        run.toItsEnd(job);
    }
}
