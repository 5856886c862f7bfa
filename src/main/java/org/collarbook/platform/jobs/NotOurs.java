package org.collarbook.platform.jobs;

/** The job was cancelled, another service has taken it up, or this one stops: whoever does it lets go of it. */
public final class NotOurs extends RuntimeException {

    private static final long serialVersionUID = 1L;
}
