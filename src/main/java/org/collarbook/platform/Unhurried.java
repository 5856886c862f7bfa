package org.collarbook.platform;

import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * A statement that takes longer than a request may ({@code collarbook.requests.time}) is ended by the database, and with
 * it what the request holds. What goes over the whole register in the background, or is sent as long as somebody reads,
 * says so at the beginning of its transaction.
 */
public final class Unhurried {

    /** For a statement that sets more than this one. */
    public static final String SETTING = "set_config('statement_timeout', '0', true)";

    private Unhurried() {}

    /** Until the running transaction ends. */
    public static void go(JdbcClient jdbc) {
        jdbc.sql("select " + SETTING).query(String.class).single();
    }
}
