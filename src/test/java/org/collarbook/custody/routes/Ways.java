package org.collarbook.custody.routes;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.jspecify.annotations.Nullable;

/** Routes as a request tells them, each with a depot, stops and a code of its own. */
final class Ways {

    private Ways() {}

    static UUID vehicle(Api api) {
        var body = Given.depot();
        body.put("kind", "VEHICLE");
        return UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
    }

    /** Driven every Thursday from 2026-11-26 on, not on holidays. */
    static Map<String, @Nullable Object> everyThursday(UUID depot, List<UUID> stops) {
        return ruled("FREQ=WEEKLY;BYDAY=TH", depot, stops);
    }

    static Map<String, @Nullable Object> ruled(String rule, UUID depot, List<UUID> stops) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("code", "W" + Given.serial());
        body.put("name", "Mill valley");
        body.put("depot", depot);
        body.put("visits", visits(rule, "2026-11-26", false));
        body.put("stops", stops);
        return body;
    }

    static Map<String, @Nullable Object> visits(@Nullable Object rule, @Nullable Object from,
            @Nullable Object onHolidays) {
        var visits = new LinkedHashMap<String, @Nullable Object>();
        visits.put("rule", rule);
        visits.put("from", from);
        visits.put("onHolidays", onHolidays);
        return visits;
    }
}
