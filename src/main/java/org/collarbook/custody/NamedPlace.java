package org.collarbook.custody;

import java.util.UUID;

/** What somebody named by its id or code. */
public record NamedPlace(UUID id, String code, String name) {

    /** What there is to name, and where it is kept. */
    public enum Kind {
        SITE("site", "true"),
        DEPOT("site", "kind = 'DEPOT'"),
        CUSTOMER("customer", "true"),
        ROUTE("route", "true");

        final String table;
        final String condition;

        Kind(String table, String condition) {
            this.table = table;
            this.condition = condition;
        }
    }
}
