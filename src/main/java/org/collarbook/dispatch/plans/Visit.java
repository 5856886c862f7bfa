package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.UUID;

/** A route's vehicle at its stops on a day. */
record Visit(LocalDate day, UUID route, UUID vehicle) implements Comparable<Visit> {

    private static final Comparator<Visit> IN_TIME = Comparator.comparing(Visit::day).thenComparing(Visit::route);

    @Override
    public int compareTo(Visit other) {
        return IN_TIME.compare(this, other);
    }
}
