package org.collarbook.custody.routes.web;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.custody.Places;
import org.collarbook.custody.routes.Calendars;
import org.collarbook.custody.routes.Routes;
import org.collarbook.custody.routes.VisitPattern.NotDriven;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

/** Computed at each question, for the rule, its exceptions and the holidays may have changed since the last. */
@RestController
@RequestMapping(produces = "application/json")
@Tag(name = "Routes")
class VisitsController {

    private static final int NINETY_DAYS = 90;

    private final Routes routes;
    private final Calendars calendars;
    private final Places places;
    private final DepotDays depots;

    VisitsController(Routes routes, Calendars calendars, Places places, DepotDays depots) {
        this.routes = routes;
        this.calendars = calendars;
        this.places = places;
        this.depots = depots;
    }

    record RouteVisits(UUID route, LocalDate from, LocalDate to, List<VisitDay> visits, List<NotDriven> notDriven) {}

    /** {@code added}: why, for a day that was added. */
    record VisitDay(LocalDate day, @Nullable String added) {}

    @GetMapping("/api/routes/{id}/visits")
    @Operation(summary = "The days on which a route is driven, and those of its rule on which it is not", description = """
            Both ends included; today and 90 days on where nothing is told, at most three years.""")
    RouteVisits ofRoute(@PathVariable UUID id, @RequestParam(required = false) @Nullable LocalDate from,
            @RequestParam(required = false) @Nullable LocalDate to) {
        var route = routes.find(id).orElseThrow(() -> Problem.notFound("route").asException());
        var days = Days.read(from, to, depots.today(route), NINETY_DAYS);
        var pattern = route.visits();
        return new RouteVisits(id, days.from(), days.to(),
                pattern.between(days.from(), days.to()).stream().map(day -> new VisitDay(day, pattern.added().get(day)))
                        .toList(),
                pattern.notDriven(days.from(), days.to()));
    }

    @GetMapping("/api/sites/{id}/visits")
    @Operation(summary = "When somebody is next at a site, and when again after that, by whichever route", description = """
            A visit of today counts; "today" is the date at the site. Where no visit is known, `noneKnown` says why: \
            it is not known that anybody comes.""")
    SiteVisits ofSite(@PathVariable UUID id) {
        var site = places.site(id).orElseThrow(() -> Problem.notFound("site").asException());
        return SiteVisits.of(site, depots.today(site), calendars.ofSites(List.of(id)));
    }
}
