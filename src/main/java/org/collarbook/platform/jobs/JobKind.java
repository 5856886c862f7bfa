package org.collarbook.platform.jobs;

/** One kind of job. A bean of this type is all that {@link Jobs} needs to do jobs of the kind, one after another. */
public interface JobKind {

    /** What the log calls such a job. */
    String word();

    JobQueue queue();

    /**
     * Does the job to its end: what came of it is written in one transaction with {@link JobQueue#finish}. Tells now and
     * then how far it is. It may be begun again after an attempt that came to nothing.
     *
     * @throws JobFailure when it cannot be done
     */
    void run(JobRun job);
}
