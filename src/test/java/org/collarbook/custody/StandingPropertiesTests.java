package org.collarbook.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Movements and sightings in whatever order they are told: what is stored is what the rules of the place, written down
 * here once more, say of them, and a replay of now says what is said now. The seed is the parameter.
 */
@RegisterTest
class StandingPropertiesTests {

    private static final Instant START = Instant.parse("2026-11-20T06:00:00Z");

    private final Api api;
    private final Given given;
    private final TestClock clock;
    private final JdbcClient jdbc;

    StandingPropertiesTests(Api api, Given given, TestClock clock, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    /** A movement, or without {@code to} a sighting at {@code site}. */
    private record Told(int hour, @Nullable UUID from, @Nullable UUID to, @Nullable UUID site) {}

    private record Stood(UUID site, int since) {}

    private static boolean isFollowed(List<Told> told, int index, int until) {
        var one = told.get(index);
        return told.subList(index + 1, told.size()).stream().anyMatch(later -> later.to != null
                && later.hour == one.hour && later.hour <= until && one.to != null && one.to.equals(later.from));
    }

    private static @Nullable Stood placed(List<Told> told, int until) {
        Stood placed = null;
        for (int i = 0; i < told.size(); i++) {
            var one = told.get(i);
            if (one.to != null && one.hour <= until && !isFollowed(told, i, until)
                    && (placed == null || one.hour > placed.since)) {
                placed = new Stood(one.to, one.hour);
            }
        }
        return placed;
    }

    private static Map<UUID, Integer> claims(List<Told> told, int until) {
        var claims = new TreeMap<UUID, Integer>();
        var placed = placed(told, until);
        if (placed == null) {
            return claims;
        }
        for (int i = 0; i < told.size(); i++) {
            var one = told.get(i);
            var site = one.to == null ? one.site : one.to;
            boolean says = one.to == null
                    ? one.hour >= placed.since && one.hour <= until && told.stream().noneMatch(left -> left.to != null
                            && left.hour == one.hour && one.site != null && one.site.equals(left.from))
                    : one.hour == placed.since && !isFollowed(told, i, until);
            boolean ended = told.stream().anyMatch(seen -> seen.to == null && placed.site.equals(seen.site)
                    && seen.hour > one.hour && seen.hour <= until);
            if (site != null && says && !ended && !site.equals(placed.site)) {
                claims.merge(site, one.hour, Math::min);
            }
        }
        return claims;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void whatIsStoredFollowsFromWhatWasTold(long seed) {
        var random = new Random(seed);
        var container = given.registered();
        var sites = new ArrayList<UUID>();
        for (var jurisdiction : List.of("US", "US", "CA-ON", "US")) {
            var site = Given.depot();
            site.put("jurisdiction", jurisdiction);
            sites.add(UUID.fromString(api.as(Role.CLERK).post("/api/sites", site).expect(201).id()));
        }
        var told = new ArrayList<Told>();
        for (int i = 0; i < 25; i++) {
            clock.set(TestClock.TODAY.atTime(12, 0).toInstant(java.time.ZoneOffset.UTC).plusSeconds(i));
            tell(random, container, sites, told);
            assertThat(stored(container)).as("seed %d after %s", seed, told).isEqualTo(expected(told));
            var now = api.as(Role.FILLER).get("/api/containers/" + container + "/assessment").expect(200);
            var replayed = api.as(Role.FILLER).get("/api/containers/" + container + "/assessment?knownAt="
                    + clock.instant()).expect(200);
            assertThat(replayed.at("/reasons")).as("seed %d after %s", seed, told).isEqualTo(now.at("/reasons"));
            assertThat(replayed.text("/status")).isEqualTo(now.text("/status"));
        }
    }

    private void tell(Random random, UUID container, List<UUID> sites, List<Told> told) {
        int hour = random.nextInt(8);
        var site = sites.get(random.nextInt(sites.size()));
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("containerId", container);
        body.put("occurredAt", START.plusSeconds(3600L * hour).toString());
        if (random.nextInt(2) == 0) {
            body.put("site", site);
            api.as(Role.YARD).post("/api/sightings", body).expect(201);
            told.add(new Told(hour, null, null, site));
            return;
        }
        var stated = random.nextInt(2) == 0 ? sites.get(random.nextInt(sites.size())) : null;
        body.put("toSite", site);
        body.put("fromSite", stated);
        var then = placed(told, hour);
        var others = claims(told, hour);
        var answer = api.as(Role.YARD).post("/api/movements", body);
        if (stated != null && then != null && !stated.equals(then.site) && !others.containsKey(stated)) {
            answer.expectProblem(409, "PLACE_DISPUTED");
            return;
        }
        answer.expect(201);
        var known = then != null && then.since < hour && others.isEmpty() ? then.site : null;
        told.add(new Told(hour, stated == null ? known : stated, site, null));
    }

    private static List<String> expected(List<Told> told) {
        var placed = placed(told, Integer.MAX_VALUE);
        var rows = new ArrayList<String>();
        if (placed != null) {
            rows.add("placed " + placed.site + " " + START.plusSeconds(3600L * placed.since));
            var claims = claims(told, Integer.MAX_VALUE);
            claims.forEach((site, since) -> rows.add(site + " false " + START.plusSeconds(3600L * since)));
            if (!claims.isEmpty()) {
                rows.add(placed.site + " true " + START.plusSeconds(3600L * placed.since));
            }
        }
        rows.sort(null);
        return rows;
    }

    private List<String> stored(UUID container) {
        var rows = new ArrayList<String>();
        jdbc.sql("select site_id, since from placement where container_id = ?").param(container)
                .query(row -> {
                    rows.add("placed " + row.getString(1) + " " + row.getTimestamp(2).toInstant());
                });
        jdbc.sql("select site_id, recorded, since from place_claim where container_id = ?").param(container)
                .query(row -> {
                    rows.add(row.getString(1) + " " + row.getBoolean(2) + " " + row.getTimestamp(3).toInstant());
                });
        rows.sort(null);
        return rows;
    }
}
