package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.holds.HoldReason;
import org.collarbook.platform.Ids;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Routes written into their tables. They are driven on holidays as well unless a test says otherwise. */
final class GivenRoutes {

    static final LocalDate FIRST = LocalDate.of(2026, 1, 1);

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;

    GivenRoutes(Api api, Given given, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
    }

    UUID cylinder(UUID at, String manufactured) {
        var body = Given.cylinder();
        body.put("manufactured", manufactured);
        return at(at, body);
    }

    UUID at(UUID place, Map<String, @Nullable Object> body) {
        var id = given.registered(body);
        given.moved(id, place, "2026-11-01T09:00:00Z");
        return id;
    }

    /** The id of the hold. */
    String held(UUID container, HoldReason reason) {
        return api.as(Role.FILLER).post("/api/containers/" + container + "/holds", Map.of("reason", reason))
                .expect(201).text("/hold/id");
    }

    /** A site of another kind than a customer's. */
    UUID placed(String kind) {
        var body = Given.depot();
        body.put("kind", kind);
        return UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
    }

    Answer list(String route, @Nullable String visit) {
        return api.as(Role.DISPATCHER).get("/api/routes/" + route + "/pull-list"
                + (visit == null ? "" : "?visit=" + visit)).expect(200);
    }

    /** By a recurrence rule from the first of 2026 on. */
    String route(UUID depot, String rule, UUID... stops) {
        return route(depot, null, rule, FIRST, stops);
    }

    String route(UUID depot, @Nullable UUID vehicle, String rule, LocalDate first, UUID... stops) {
        var code = "R" + Given.serial();
        var id = Ids.next();
        jdbc.sql("insert into route (id, code, name, depot_id, vehicle_id, rule, first_day, on_holidays)"
                + " values (?, ?, ?, ?, ?, ?, ?, true)")
                .params(Arrays.asList(id, code, "Loop " + code, depot, vehicle, rule, first)).update();
        for (int i = 0; i < stops.length; i++) {
            jdbc.sql("insert into route_stop values (?, ?, ?)").params(id, i + 1, stops[i]).update();
        }
        return code;
    }

    /** On these days and no others. */
    String on(UUID depot, List<LocalDate> days, UUID... stops) {
        var code = route(depot, null, "FREQ=DAILY;COUNT=1", days.getFirst(), stops);
        days.stream().skip(1).forEach(day -> except(code, day, "ADDED", "once more"));
        return code;
    }

    void except(String route, LocalDate day, String kind, String reason) {
        jdbc.sql("insert into route_exception select id, ?, ?, ? from route where code = ?")
                .params(day, kind, reason, route).update();
    }

    void notOnHolidays(String route) {
        jdbc.sql("update route set on_holidays = false where code = ?").param(route).update();
    }

    void holiday(LocalDate day, String name) {
        jdbc.sql("insert into holiday values (?, ?)").params(day, name).update();
    }

    void noHoliday(LocalDate day) {
        jdbc.sql("delete from holiday where day = ?").param(day).update();
    }

    void rack(UUID vehicle, String size, int places) {
        jdbc.sql("insert into rack values (?, ?, ?)").params(vehicle, size, places).update();
    }
}
