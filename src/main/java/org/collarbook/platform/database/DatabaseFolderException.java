package org.collarbook.platform.database;

/** The data folder cannot be served; the message says why and what to do. */
class DatabaseFolderException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    DatabaseFolderException(String message) {
        super(message);
    }
}
