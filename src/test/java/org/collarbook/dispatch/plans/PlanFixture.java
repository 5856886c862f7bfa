package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A depot with a route that a vehicle drives on Wednesdays, and cylinders at its stops. */
final class PlanFixture {

    static final Set<String> OVER = Set.of("DONE", "FAILED", "CANCELLED");

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;
    final UUID depot;

    PlanFixture(Api api, Given given, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
        this.depot = given.site(null);
    }

    UUID vehicle(int places) {
        var body = Given.depot();
        body.put("kind", "VEHICLE");
        var vehicle = UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
        if (places >= 0) {
            jdbc.sql("insert into rack (vehicle_id, size, places) values (?, '20 lb', ?)").params(vehicle, places)
                    .update();
        }
        return vehicle;
    }

    UUID customerSite() {
        return given.site(given.customer());
    }

    UUID route(@Nullable UUID vehicle, UUID... stops) {
        var id = UUID.randomUUID();
        jdbc.sql("""
                insert into route (id, code, name, depot_id, vehicle_id, rule, first_day, on_holidays)
                values (?, ?, 'a loop', ?, ?, 'FREQ=WEEKLY;BYDAY=WE', ?, true)""")
                .params(id, "R" + Given.serial(), depot, vehicle, LocalDate.of(2026, 11, 4)).update();
        for (int i = 0; i < stops.length; i++) {
            jdbc.sql("insert into route_stop (route_id, position, site_id) values (?, ?, ?)")
                    .params(id, i + 1, stops[i]).update();
        }
        return id;
    }

    /** Due twelve years after it was made: 49 CFR 180.209(e). */
    UUID cylinder(UUID site, String manufactured) {
        var body = Given.cylinder();
        body.put("manufactured", manufactured);
        return at(site, body);
    }

    UUID at(UUID site, Map<String, @Nullable Object> body) {
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    Map<String, Object> request(int perWeek) {
        var body = new LinkedHashMap<String, Object>();
        body.put("depot", depot);
        body.put("months", 6);
        body.put("shop", Map.of("perWeek", perWeek, "weeks", List.of()));
        return body;
    }

    /** Asks for the plan and waits for its end. */
    Answer planned(Object request) {
        var answer = api.as(Role.DISPATCHER).post("/api/pull-plans", request).expect(202);
        return over(answer.header("Location"));
    }

    Answer over(String location) {
        for (int tries = 0; tries < 3600; tries++) {
            var plan = api.as(Role.DISPATCHER).get(location).expect(200);
            if (OVER.contains(plan.text("/status"))) {
                return plan;
            }
            pause();
        }
        throw new AssertionError("the plan is still not over: " + api.as(Role.DISPATCHER).get(location));
    }

    private static void pause() {
        try {
            Thread.sleep(50);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
