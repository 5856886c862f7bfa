package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.UUID;

/** The places for a size on a vehicle on one day, which all routes that it drives on that day share. */
record RackDay(LocalDate day, UUID vehicle, String size) implements Comparable<RackDay> {

    private static final Comparator<RackDay> IN_TIME = Comparator.comparing(RackDay::day)
            .thenComparing(RackDay::vehicle).thenComparing(RackDay::size);

    @Override
    public int compareTo(RackDay other) {
        return IN_TIME.compare(this, other);
    }
}
