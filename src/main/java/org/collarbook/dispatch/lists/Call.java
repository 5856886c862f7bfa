package org.collarbook.dispatch.lists;

import java.time.LocalDate;

import org.collarbook.custody.Place;
import org.jspecify.annotations.Nullable;

/**
 * A stop that is asked about: the site, its place on a route where one calls there, when somebody is there, when again
 * after that, and how long what stays must last. {@code day} is the one that the status is told for.
 */
record Call(Place site, @Nullable Integer position, @Nullable String route, @Nullable LocalDate visit,
        @Nullable LocalDate next, Until until, LocalDate day) {

    /** On the day of the visit, or today at the site where that is later. */
    static Call of(Place site, @Nullable Integer position, @Nullable String route, @Nullable LocalDate visit,
            @Nullable LocalDate next, Until until, LocalDate today) {
        return new Call(site, position, route, visit, next, until,
                visit == null || visit.isBefore(today) ? today : visit);
    }

    /** The day through which what is left in place of a container should last at least. */
    @Nullable
    LocalDate lasting() {
        return next != null ? next : visit != null ? visit : until.dayOrNull();
    }
}
