package org.collarbook.intake;

import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.platform.jobs.JobKind;
import org.collarbook.platform.jobs.JobQueue;
import org.collarbook.platform.jobs.JobRun;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** A check tells what a commit would do, and stores nothing in the register; a commit loads what a check would take. */
record LedgerJob(Purpose purpose, LedgerPasses passes, RunPass pass) implements JobKind {

    @Configuration(proxyBeanMethods = false)
    static class Kinds {

        @Bean
        LedgerJob checkOfLedgers(LedgerPasses passes, RunPass pass) {
            return new LedgerJob(Purpose.CHECK, passes, pass);
        }

        @Bean
        LedgerJob commitOfLedgers(LedgerPasses passes, RunPass pass) {
            return new LedgerJob(Purpose.COMMIT, passes, pass);
        }
    }

    @Override
    public String word() {
        return switch (purpose) {
            case CHECK -> "The check of a ledger";
            case COMMIT -> "The commit of a ledger";
        };
    }

    @Override
    public JobQueue queue() {
        return passes.of(purpose);
    }

    @Override
    public void run(JobRun job) {
        pass.toItsEnd(job);
    }
}
