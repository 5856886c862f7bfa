package org.collarbook.dispatch.lists;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.collarbook.custody.Place;
import org.collarbook.custody.Places;
import org.collarbook.custody.routes.Calendars;
import org.collarbook.custody.routes.Route;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Which stops are asked about, and how long what stays there must last: by route, by depot, by sites. */
@Component
class Rounds {

    private final Calendars calendars;
    private final Places places;
    private final PullSites sites;
    private final Clock clock;

    Rounds(Calendars calendars, Places places, PullSites sites, Clock clock) {
        this.calendars = calendars;
        this.places = places;
        this.sites = sites;
        this.clock = clock;
    }

    Round of(PullQuestion question) {
        var before = question.before();
        return switch (question.area()) {
            case PullArea.OneSite(var site) -> ofSites(sites.site(site), true, before);
            case PullArea.OneCustomer(var customer) -> ofSites(sites.customer(customer), false, before);
            case PullArea.Near near -> ofSites(sites.near(near), false, before);
            case PullArea.OneDepot(var depot) -> ofDepot(depot, question.visit(), before);
        };
    }

    /** Of a route (id or code) on a day, or on its next visit from today on at its depot. */
    Round ofRoute(String name, @Nullable LocalDate asked) {
        var calendar = calendars.around(name);
        var route = calendar.routes().stream()
                .filter(one -> one.code().equals(name) || one.id().toString().equals(name))
                // an id is one route's alone, whatever others are called
                .max(Comparator.comparing(one -> one.id().toString().equals(name)))
                .orElseThrow(() -> Problem.notFound("route").asException());
        var known = sitesOf(List.of(route), route.depot());
        var depot = known.get(route.depot());
        var day = asked == null ? next(route, todayAt(depot)) : NotAVisit.refuse(List.of(route), asked);
        if (day == null) {
            throw NotAVisit.of(List.of(route), todayAt(depot)).asException();
        }
        return new Round(
                new PullList.Asked("Route " + route.code() + ", " + route.name(), named(route, known), day, null),
                new Calls(calendar, null, clock).of(route, day, known), depot, route.vehicle(), true);
    }

    /** Of the routes that load at a depot: those that are driven on the day asked about, or each on its next visit. */
    private Round ofDepot(String name, @Nullable LocalDate visit, @Nullable LocalDate before) {
        var depot = sites.depot(name);
        var calendar = calendars.ofDepot(depot.id());
        var routes = calendar.routes().stream().filter(route -> route.depot().equals(depot.id())).toList();
        if (visit != null) {
            NotAVisit.refuse(routes, visit);
        }
        var known = sitesOf(routes, depot.id());
        var made = new Calls(calendar, before, clock);
        var calls = new HashMap<UUID, Call>();
        for (var route : routes) {
            if (visit == null || route.visits().isVisit(visit)) {
                var day = visit == null ? next(route, todayAt(known.get(depot.id()))) : visit;
                // a site on two of the routes is listed with the one that is there first
                made.of(route, day, known).forEach(call -> calls.merge(call.site().siteId(), call, Rounds::sooner));
            }
        }
        var asked = new PullList.Asked("Depot " + depot.code() + ", " + depot.name(), null, visit, before);
        return new Round(asked, calls.values().stream().sorted(Round.BY_ROUTE).toList(), known.get(depot.id()), null,
                true);
    }

    /** Of sites, each by its own next visit and the one after that. */
    private Round ofSites(PullSites.Found found, boolean everyStop, @Nullable LocalDate before) {
        var made = new Calls(calendars.ofSites(found.sites()), before, clock);
        var calls = places.sites(found.sites()).stream().filter(Calls::isStop).map(made::of).sorted(Round.BY_ROUTE)
                .toList();
        return new Round(new PullList.Asked(found.title(), null, null, before), calls, null, null, everyStop);
    }

    private static Call sooner(Call one, Call other) {
        return other.visit() != null && (one.visit() == null || other.visit().isBefore(one.visit())) ? other : one;
    }

    private static @Nullable LocalDate next(Route route, LocalDate today) {
        return route.visits().next(today.minusDays(1)).orElse(null);
    }

    private LocalDate todayAt(Place site) {
        return LocalDate.now(clock.withZone(site.zone()));
    }

    private Map<UUID, Place> sitesOf(Collection<Route> routes, UUID depot) {
        var ids = new HashSet<UUID>();
        ids.add(depot);
        for (var route : routes) {
            ids.addAll(route.stops());
            if (route.vehicle() != null) {
                ids.add(route.vehicle());
            }
        }
        return places.sites(ids).stream().collect(Collectors.toMap(Place::siteId, Function.identity()));
    }

    private static PullList.NamedRoute named(Route route, Map<UUID, Place> known) {
        var vehicle = route.vehicle();
        return new PullList.NamedRoute(route.id(), route.code(), route.name(),
                PullList.NamedSite.of(known.get(route.depot())),
                vehicle == null ? null : PullList.NamedSite.of(known.get(vehicle)));
    }
}
