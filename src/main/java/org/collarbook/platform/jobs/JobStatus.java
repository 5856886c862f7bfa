package org.collarbook.platform.jobs;

/** Where a job stands. The last three are its end. */
public enum JobStatus {

    QUEUED,
    RUNNING,
    DONE,
    FAILED,
    CANCELLED;

    public boolean isOver() {
        return switch (this) {
            case QUEUED, RUNNING -> false;
            case DONE, FAILED, CANCELLED -> true;
        };
    }
}
