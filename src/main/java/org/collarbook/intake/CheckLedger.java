package org.collarbook.intake;

import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.platform.jobs.JobKind;
import org.collarbook.platform.jobs.JobQueue;
import org.collarbook.platform.jobs.JobRun;
import org.springframework.stereotype.Component;

/** Checks a ledger: tells what a commit would do. It stores nothing in the register, so after a kill it begins anew. */
@Component
class CheckLedger implements JobKind {

    private final LedgerPasses passes;
    private final RunPass run;

    CheckLedger(LedgerPasses passes, RunPass run) {
        this.passes = passes;
        this.run = run;
    }

    @Override
    public String word() {
        return "The check of a ledger";
    }

    @Override
    public JobQueue queue() {
        return passes.of(Purpose.CHECK);
    }

    @Override
    public void run(JobRun job) {
        run.toItsEnd(job);
    }
}
