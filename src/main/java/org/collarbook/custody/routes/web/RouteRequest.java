package org.collarbook.custody.routes.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.custody.Place;
import org.collarbook.custody.SiteKind;
import org.collarbook.custody.routes.RouteContent;
import org.collarbook.custody.routes.VisitRule;
import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

@Schema(requiredProperties = {"code", "name", "depot", "visits", "stops"})
record RouteRequest(@Nullable String code, @Nullable String name, @Nullable UUID depot, @Nullable UUID vehicle,
        @Nullable AskedVisits visits, @Nullable List<@Nullable UUID> stops) {

    private static final Set<SiteKind> DEPOTS = EnumSet.of(SiteKind.DEPOT);
    private static final Set<SiteKind> VEHICLES = EnumSet.of(SiteKind.VEHICLE);
    private static final Set<SiteKind> STOPS = EnumSet.of(SiteKind.CUSTOMER, SiteKind.DEPOT);

    record AskedVisits(@Nullable String rule, @Nullable LocalDate from, @Nullable Boolean onHolidays) {

        private @Nullable VisitRule read(Inputs inputs) {
            var given = inputs.present("/visits/rule", rule == null || rule.isBlank() ? null : rule,
                    VisitRule.ACCEPTED);
            if (given != null && given.length() > VisitRule.LONGEST) {
                inputs.refuse("/visits/rule", "INVALID_TEXT", given, "at most " + VisitRule.LONGEST + " characters");
            } else if (given != null && !VisitRule.isRead(given.strip())) {
                inputs.refuse("/visits/rule", "INVALID_RULE", given, VisitRule.ACCEPTED);
            } else if (given != null) {
                return new VisitRule(given);
            }
            return null;
        }

        private @Nullable LocalDate first(Inputs inputs) {
            var first = inputs.present("/visits/from", from, "the day from which the rule counts, such as 2026-11-25");
            return first != null && Days.isWithin("/visits/from", first, inputs) ? first : null;
        }
    }

    /** {@code sites}: those of the given ids that exist. */
    RouteContent toContent(Function<Collection<UUID>, List<Place>> sites) {
        var inputs = new Inputs();
        var known = sites.apply(named()).stream().collect(Collectors.toMap(Place::siteId, Place::kind));
        var readCode = inputs.required("/code", code, 40);
        var readName = inputs.required("/name", name, 200);
        var readDepot = inputs.present("/depot", depot, "the id of the depot at which the vehicle loads");
        site("/depot", depot, DEPOTS, known, inputs);
        site("/vehicle", vehicle, VEHICLES, known, inputs);
        var readStops = stops(known, inputs);
        var told = inputs.present("/visits", visits, "the days of the route: rule, from and onHolidays");
        var rule = told == null ? null : told.read(inputs);
        var first = told == null ? null : told.first(inputs);
        var holidays = told == null
                ? null
                : inputs.present("/visits/onHolidays", told.onHolidays, "true or false");
        if (rule != null && first != null && !rule.comesTrueFrom(first)) {
            inputs.refuse("/visits/rule", "NO_VISIT", rule.text(), "a rule that comes true on or after " + first
                    + ", and every few years at least");
        }
        inputs.done();
        if (readCode == null || readName == null || readDepot == null || rule == null || first == null
                || holidays == null) {
            throw new IllegalStateException("a route was neither read nor refused");
        }
        return new RouteContent(readCode, readName, readDepot, vehicle, rule, first, holidays, readStops);
    }

    private Set<UUID> named() {
        var stopsNamed = stops == null ? Stream.<@Nullable UUID>empty() : stops.stream().limit(RouteContent.MOST_STOPS);
        return Stream.concat(Stream.of(depot, vehicle), stopsNamed).filter(Objects::nonNull)
                .collect(Collectors.toSet());
    }

    private List<UUID> stops(Map<UUID, SiteKind> known, Inputs inputs) {
        var given = inputs.present("/stops", stops, "the ids of the sites in their order; [] when there are none yet");
        if (given == null) {
            return List.of();
        }
        if (given.size() > RouteContent.MOST_STOPS) {
            inputs.refuse("/stops", "TOO_MANY", given.size() + " stops", "at most " + RouteContent.MOST_STOPS);
            return List.of();
        }
        var read = new ArrayList<UUID>();
        var seen = new HashSet<UUID>();
        for (int i = 0; i < given.size(); i++) {
            var pointer = "/stops/" + i;
            var stop = inputs.present(pointer, given.get(i), "the id of a site");
            if (stop != null && !seen.add(stop)) {
                inputs.refuse(pointer, "TOLD_TWICE", stop.toString(), "each site once on a route");
            } else if (stop != null) {
                site(pointer, stop, STOPS, known, inputs);
                read.add(stop);
            }
        }
        return read;
    }

    private static void site(String pointer, @Nullable UUID site, Set<SiteKind> kinds, Map<UUID, SiteKind> known,
            Inputs inputs) {
        if (site == null) {
            return;
        }
        var kind = known.get(site);
        var accepted = "the id of a site of the kind "
                + kinds.stream().map(SiteKind::name).collect(Collectors.joining(" or "));
        if (kind == null) {
            inputs.refuse(pointer, "UNKNOWN_SITE", site.toString(), accepted);
        } else if (!kinds.contains(kind)) {
            inputs.refuse(pointer, "WRONG_KIND", site + ", a " + kind, accepted);
        }
    }
}
