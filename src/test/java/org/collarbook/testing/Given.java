package org.collarbook.testing;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;

import org.collarbook.access.Role;
import org.jspecify.annotations.Nullable;

/** Things that a test starts from, each new and unlike any other. */
public final class Given {

    /** All of as many digits, so that they sort as they came. */
    private static final AtomicInteger NUMBER = new AtomicInteger(100_000);

    private final Api api;

    Given(Api api) {
        this.api = api;
    }

    public static String serial() {
        return "T" + ProcessHandle.current().pid() % 100_000 + "-" + NUMBER.incrementAndGet();
    }

    /** A 20 lb cylinder of May 2004 with nothing unknown; change what the test is about. */
    public static Map<String, @Nullable Object> cylinder() {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("kind", "CYLINDER");
        body.put("specification", "DOT-4BA240");
        body.put("maker", "QX");
        body.put("serial", serial());
        body.put("manufactured", "5-04");
        body.put("waterCapacity", "47.6 lb");
        body.put("tare", "TW 17.0");
        body.put("coated", true);
        body.put("service", Map.of("lading", "LPG", "exclusive", true, "corrosionFree", true));
        body.put("owned", true);
        body.put("marksLegible", true);
        body.put("collarRead", true);
        return body;
    }

    /** The id of a newly registered {@link #cylinder}. */
    public UUID registered() {
        return registered(cylinder());
    }

    public UUID registered(Map<String, @Nullable Object> body) {
        return UUID.fromString(api.as(Role.CLERK).post("/api/containers", body).expect(201).id());
    }

    public UUID customer() {
        var code = "C" + serial();
        return UUID.fromString(api.as(Role.CLERK)
                .post("/api/customers", Map.of("code", code, "name", "Customer " + code)).expect(201).id());
    }

    public static Map<String, @Nullable Object> depot() {
        var code = "S" + serial();
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("code", code);
        body.put("name", "Depot " + code);
        body.put("kind", "DEPOT");
        body.put("zone", "America/Chicago");
        body.put("jurisdiction", "US");
        return body;
    }

    /** The id of a site; of the customer, or a depot when that is null. */
    public UUID site(@Nullable UUID customer) {
        var body = depot();
        if (customer != null) {
            body.put("kind", "CUSTOMER");
            body.put("customerId", customer);
        }
        return UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
    }

    /** Moves the container to the site at a time such as 2026-11-24T09:00:00Z. */
    public void moved(UUID container, UUID site, String occurredAt) {
        api.as(Role.YARD).post("/api/movements",
                Map.of("containerId", container, "toSite", site, "occurredAt", occurredAt)).expect(201);
    }

    /** The container is seen standing at the site. */
    public void seen(UUID container, UUID site, String occurredAt) {
        api.as(Role.YARD).post("/api/sightings",
                Map.of("containerId", container, "site", site, "occurredAt", occurredAt)).expect(201);
    }
}
