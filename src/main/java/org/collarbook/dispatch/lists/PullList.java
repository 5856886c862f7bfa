package org.collarbook.dispatch.lists;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.collarbook.custody.DisputedPlace;
import org.collarbook.custody.Place;
import org.collarbook.registry.PlaceClaim;
import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** What must come back, stop by stop, with what to load in its place. */
record PullList(Asked asked, List<Stop> stops, int count, List<SizeTotal> sizes, List<Disputed> placeDisputed,
        @Nullable FollowedPlan plan, String caution) {

    /**
     * What was asked for. {@code title} names it for a person, such as "Route N-2, north loop"; {@code before} is given
     * where a date was asked about, and the visits decide where it is null.
     */
    @Schema(name = "PullListAsked")
    record Asked(String title, @Nullable NamedRoute route, @Nullable LocalDate visit, @Nullable LocalDate before) {}

    record NamedRoute(UUID id, String code, String name, NamedSite depot, @Nullable NamedSite vehicle) {}

    record NamedSite(UUID id, String code, String name, @Nullable String address) {

        static NamedSite of(Place site) {
            return new NamedSite(site.siteId(), site.code(), site.name(), site.address());
        }
    }

    /**
     * A site in the order of the route. {@code visit}: when somebody is next there, {@code next}: when again after that;
     * null where none is known.
     */
    @Schema(name = "PullStop") // a tank that is out of service has a stop as well
    record Stop(@Nullable Integer position, @Nullable String route, NamedSite site, @Nullable LocalDate visit,
            @Nullable LocalDate next, List<Pulled> containers, List<ToLookInto> undetermined) {}

    /** What is done with a container at the stop. */
    enum Action {
        /** Taken away, another one left in its place. */
        SWAP,
        /** Taken away as a whole: a cargo or portable tank. */
        BRING_IN,
        /** It stays; the work is done at the site. */
        WORK_AT_SITE
    }

    /**
     * A container that must come back. {@code status} is the word on the day of the visit, or of today where that is
     * later; {@code check}: what to look at before it is moved.
     */
    record Pulled(UUID id, Action action, String kind, String specification, @Nullable String maker, String serial,
            @Nullable YearMonth manufactured, String size, @Nullable String tag, String status, String requirement,
            @Nullable String jurisdiction, @Nullable YearMonth due, @Nullable LocalDate lastDay, Why reason,
            List<String> check) {}

    record Why(String code, String text, @Nullable String rule, @Nullable Citation citation) {}

    /** At the stop, but its due month cannot be told: {@code missing} says what to read off it. */
    record ToLookInto(UUID id, String kind, String specification, @Nullable String maker, String serial, String size,
            @Nullable String tag, List<String> missing) {}

    /**
     * Of a size: how many to load; how many at the depot last past the next visits; how many are short of that; how many
     * the vehicle's rack takes (null is not known) and how many do not go onto it.
     */
    record SizeTotal(String size, long load, @Nullable Long inDateAtDepot, @Nullable Long shortfall,
            @Nullable Integer rack, @Nullable Long overRack) {}

    /**
     * Two places claim it: neither is believed until somebody has looked. {@code status}, {@code due}, {@code lastDay} and
     * {@code check} as for one that must come back, whether it must or not; null is not known.
     */
    record Disputed(UUID id, @Nullable String kind, String specification, @Nullable String maker, String serial,
            String size, @Nullable String tag, @Nullable String status, @Nullable YearMonth due,
            @Nullable LocalDate lastDay, List<String> check, List<Claim> claims) {

        boolean isClaimedBy(NamedSite site) {
            return claims.stream().anyMatch(claim -> claim.site().id().equals(site.id()));
        }

        static Disputed of(DisputedPlace place, @Nullable PullRow row) {
            return new Disputed(place.containerId(), row == null ? null : row.kind().name(), place.specification(),
                    place.maker(), place.serial(), place.size(), place.tag(), row == null ? null : row.status().name(),
                    row == null ? null : row.due(), row == null ? null : row.lastDay(), DriverChecks.ofDisputed(row),
                    place.claims().stream().map(Claim::of).toList());
        }
    }

    /** The recorded place since it was moved there, another since it was first seen there. */
    @Schema(name = "ListedClaim") // a container tells of its own claims
    record Claim(NamedSite site, boolean recorded, Instant since) {

        static Claim of(PlaceClaim claim) {
            var site = claim.site();
            return new Claim(new NamedSite(site.id(), site.code(), site.name(), site.address()), claim.recorded(),
                    claim.since());
        }
    }

    /** The accepted plan that the list follows besides. */
    record FollowedPlan(UUID id, int number) {}
}
