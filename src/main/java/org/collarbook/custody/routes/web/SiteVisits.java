package org.collarbook.custody.routes.web;

import java.time.LocalDate;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.custody.Place;
import org.collarbook.custody.routes.Route;
import org.collarbook.custody.routes.VisitCalendar;
import org.jspecify.annotations.Nullable;

/** {@code noneKnown} stands where {@code next} or {@code afterNext} is absent. */
record SiteVisits(UUID site, LocalDate today, @Nullable SiteVisit next, @Nullable SiteVisit afterNext,
        @Nullable NoneKnown noneKnown) {

    record SiteVisit(LocalDate day, UUID route, String code, String name) {

        static SiteVisit from(VisitCalendar.Visit visit) {
            return new SiteVisit(visit.day(), visit.route().id(), visit.route().code(), visit.route().name());
        }
    }

    enum Why {
        NO_ROUTE,
        NO_VISIT_TO_COME,
        NO_VISIT_AFTER_NEXT
    }

    record NoneKnown(Why code, String text) {}

    static SiteVisits of(Place site, LocalDate today, VisitCalendar calendar) {
        var id = site.siteId();
        var next = calendar.next(id, today.minusDays(1));
        var afterNext = next.flatMap(visit -> calendar.next(id, visit.day()));
        var routes = calendar.callingAt(id).stream().map(Route::code).collect(Collectors.joining(", "));
        NoneKnown none = null;
        if (routes.isEmpty()) {
            none = new NoneKnown(Why.NO_ROUTE, "No route calls at site " + site.code() + ": no visit is known.");
        } else if (next.isEmpty()) {
            none = new NoneKnown(Why.NO_VISIT_TO_COME, "No visit of site " + site.code() + " is known from " + today
                    + " on, by route " + routes + ".");
        } else if (afterNext.isEmpty()) {
            none = new NoneKnown(Why.NO_VISIT_AFTER_NEXT, "No visit of site " + site.code() + " is known after "
                    + next.get().day() + ", by route " + routes + ".");
        }
        return new SiteVisits(id, today, next.map(SiteVisit::from).orElse(null),
                afterNext.map(SiteVisit::from).orElse(null),
                none);
    }
}
