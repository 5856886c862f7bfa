package org.collarbook.dispatch.lists;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.custody.Place;
import org.collarbook.custody.SiteKind;
import org.collarbook.custody.routes.Route;
import org.collarbook.custody.routes.VisitCalendar;
import org.jspecify.annotations.Nullable;

/** Makes calls by a calendar; {@code before} is a day that was asked about in place of the visits. */
record Calls(VisitCalendar calendar, @Nullable LocalDate before, Clock clock) {

    /** What is on a vehicle or at a requalifier's is on its way: there is nothing to bring back from there. */
    static boolean isStop(Place site) {
        return site.kind() == SiteKind.CUSTOMER || site.kind() == SiteKind.DEPOT;
    }

    /** At each stop of a route. */
    List<Call> of(Route route, @Nullable LocalDate visit, Map<UUID, Place> known) {
        var calls = new ArrayList<Call>();
        for (var id : route.stops()) {
            var site = known.get(id);
            if (isStop(site)) {
                calls.add(of(route, site, visit));
            }
        }
        return calls;
    }

    /** At a site on its own next visit from today on, by whatever route. */
    Call of(Place site) {
        var visit = calendar.next(site.siteId(), today(site).minusDays(1)).orElse(null);
        return visit == null
                ? Call.of(site, null, null, null, until(null, null), today(site))
                : of(visit.route(), site, visit.day());
    }

    private Call of(Route route, Place site, @Nullable LocalDate visit) {
        var next = visit == null
                ? null
                : calendar.next(site.siteId(), visit).map(VisitCalendar.Visit::day).orElse(null);
        return Call.of(site, route, visit, next, until(visit, next), today(site));
    }

    private Until until(@Nullable LocalDate visit, @Nullable LocalDate next) {
        if (before != null) {
            return new Until.Asked(before);
        }
        return next != null
                ? new Until.NextVisit(next)
                : visit != null ? new Until.NoLaterVisit() : new Until.NoVisitKnown();
    }

    private LocalDate today(Place site) {
        return LocalDate.now(clock.withZone(site.zone()));
    }
}
