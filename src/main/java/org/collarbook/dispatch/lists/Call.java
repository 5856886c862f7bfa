package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.custody.Place;
import org.collarbook.custody.routes.Route;
import org.jspecify.annotations.Nullable;

/**
 * A stop that is asked about: the site, the route that calls there, when somebody is there, when again after that, and
 * how long what stays there must last. {@code day} is the one that the status is told for.
 */
record Call(Place site, @Nullable Route by, @Nullable LocalDate visit, @Nullable LocalDate next, Until until,
        LocalDate day) {

    /** On the day of the visit, or today at the site where that is later. */
    static Call of(Place site, @Nullable Route by, @Nullable LocalDate visit, @Nullable LocalDate next, Until until,
            LocalDate today) {
        return new Call(site, by, visit, next, until, visit == null || visit.isBefore(today) ? today : visit);
    }

    @Nullable
    String route() {
        return by == null ? null : by.code();
    }

    /** Its place on the route. */
    @Nullable
    Integer position() {
        return by == null ? null : by.stops().indexOf(site.siteId()) + 1;
    }

    /** The route whose plan is followed besides; none where a day was asked about in place of the visits. */
    @Nullable
    UUID planned() {
        return by == null || until instanceof Until.Asked ? null : by.id();
    }

    /** The day through which what is left in place of a container should last at least. */
    @Nullable
    LocalDate lasting() {
        return next != null ? next : visit != null ? visit : until.dayOrNull();
    }
}
