package org.collarbook.portal.canary;

import java.util.List;
import java.util.UUID;

import org.springframework.jdbc.core.simple.JdbcClient;

/** Breaks the rule that what a portal reads is scoped, to show that it bites. */
public class UnscopedFinder {

    private final JdbcClient jdbc;

    UnscopedFinder(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<UUID> everybodys() {
        return jdbc.sql("select id from container").query(UUID.class).list();
    }
}
