package org.collarbook.intake;

import java.util.List;
import java.util.UUID;

import org.collarbook.intake.ImportReport.State;
import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.platform.jobs.Jobs;
import org.springframework.stereotype.Component;

/** Has passes that were queued begun, and waits for one where somebody must. */
@Component
class LedgerJobs {

    private static final int LOOKED_EVERY_MILLIS = 50;

    private final Jobs jobs;
    private final List<LedgerJob> kinds;
    private final ImportReports reports;

    LedgerJobs(Jobs jobs, List<LedgerJob> kinds, ImportReports reports) {
        this.jobs = jobs;
        this.kinds = kinds;
        this.reports = reports;
    }

    void start(Purpose purpose) {
        kinds.stream().filter(kind -> kind.purpose() == purpose).forEach(jobs::start);
    }

    /** Begins the pass and waits until whichever service does it has done it. */
    ImportReport done(Purpose purpose, UUID importId) {
        start(purpose);
        var wanted = purpose == Purpose.CHECK ? State.CHECKED : State.COMMITTED;
        try {
            var report = reports.known(importId);
            while (report.state() != wanted) {
                if (report.state() == State.FAILED || report.state() == State.CANCELLED) {
                    throw new IllegalStateException("the import is " + report.state() + ": " + report.failure());
                }
                Thread.sleep(LOOKED_EVERY_MILLIS);
                report = reports.known(importId);
            }
            return report;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while the import goes on", stopped);
        }
    }
}
