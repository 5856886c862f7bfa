package org.collarbook.platform.jobs;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.transaction.TransactionException;

/** A job while it is done: what it tells of itself, and whether it is still ours. Its beat goes on another thread. */
public final class JobRun {

    private static final Logger log = LoggerFactory.getLogger(JobRun.class);

    private final JobQueue queue;
    private final Claim claim;
    private volatile Columns progress = Columns.NONE;
    private volatile boolean lost;

    public JobRun(JobQueue queue, Claim claim) {
        this.queue = queue;
        this.claim = claim;
    }

    public Claim claim() {
        return claim;
    }

    /**
     * Tells how far it is, for the next beat to write: it is seen by others though the job be within a transaction.
     *
     * @throws NotOurs when a beat has learned that it was cancelled or is another's
     */
    public void tell(Columns howFar) {
        progress = howFar;
        if (lost) {
            throw new NotOurs();
        }
    }

    /** Renews the lease. */
    public void beat() {
        try {
            lost |= !queue.renew(claim, progress);
        } catch (DataAccessException | TransactionException missed) {
            log.warn("The lease of job {} could not be renewed this time", claim.id(), missed);
        }
    }

    void letGo() {
        lost = true;
    }
}
