package org.collarbook.platform.database;

/** The configured database cannot be served safely; the message says why and what to do. */
class UnsuitableDatabaseException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    UnsuitableDatabaseException(String message) {
        super(message);
    }
}
