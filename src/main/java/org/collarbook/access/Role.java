package org.collarbook.access;

import java.util.Locale;

/** What a caller does for a living. */
public enum Role {
    FILLER,
    DISPATCHER,
    YARD,
    CLERK,
    PORTAL,
    ADMINISTRATOR;

    /** As written in requests, answers and the database. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
