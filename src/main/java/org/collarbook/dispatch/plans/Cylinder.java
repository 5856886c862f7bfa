package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A cylinder as the plan sees it. {@code lastDay}: the last one on which it is not overdue; told where {@code standing} is
 * {@code DUE}.
 */
record Cylinder(UUID id, String serial, @Nullable UUID site, String size, Standing standing,
        @Nullable LocalDate lastDay) {

    /** Stop by stop, and there by last day, so that equal choices are made alike. */
    static final Comparator<Cylinder> BY_STOP = Comparator
            .comparing(Cylinder::site, Comparator.nullsFirst(Comparator.<UUID>naturalOrder()))
            .thenComparing(Cylinder::lastDay, Comparator.nullsFirst(Comparator.<LocalDate>naturalOrder()))
            .thenComparing(Cylinder::serial).thenComparing(Cylinder::id);

    enum Standing {
        /** It has a last day, ahead or past. */
        DUE,
        /** Held, rejected or condemned: it must come back whatever its date. */
        OUT_OF_SERVICE,
        /** When it is due cannot be told. */
        UNDETERMINED,
        /** Another authority's papers decide, which the register does not know. */
        OTHER_AUTHORITY
    }

    Cylinder {
        if (standing == Standing.DUE && lastDay == null) {
            throw new IllegalArgumentException("cylinder " + id + " is due on no day");
        }
    }

    LocalDate dueDay() {
        if (lastDay == null) {
            throw new IllegalStateException("cylinder " + id + " is " + standing + " and has no last day");
        }
        return lastDay;
    }
}
