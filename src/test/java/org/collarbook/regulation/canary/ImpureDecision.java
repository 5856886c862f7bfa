package org.collarbook.regulation.canary;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Breaks the rules that keep decisions pure and exact, to show that they bite. */
public class ImpureDecision {

    private final double pounds;
    private final @Nullable JdbcClient database;

    ImpureDecision(double pounds, @Nullable JdbcClient database) {
        this.pounds = pounds;
        this.database = database;
    }

    @Override
    public String toString() {
        return pounds + " from " + database;
    }
}
