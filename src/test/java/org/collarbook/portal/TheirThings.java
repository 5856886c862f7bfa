package org.collarbook.portal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.collarbook.inspection.Sheets;
import org.collarbook.intake.Ledger;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;

/** Of one customer, something of every kind that has an id, by what it is; and what the distributor has for all. */
public final class TheirThings {

    private final Api api;
    private final Given given;
    private final Api.Session staff;
    private final Map<String, String> known = new LinkedHashMap<>();
    private final UUID customer;
    private final UUID site;
    private final UUID container;
    private final String tag = "TAG-" + Given.serial();

    private TheirThings(Api api, Given given) {
        this.api = api;
        this.given = given;
        this.staff = api.as(Role.ADMINISTRATOR);
        this.customer = given.customer();
        this.site = given.site(customer);
        var cylinder = Given.cylinder();
        cylinder.put("tag", tag);
        this.container = given.registered(cylinder);
        given.moved(container, site, "2026-11-20T09:00:00Z");
        known.put("serial", String.valueOf(cylinder.get("serial")));
    }

    public static Map<String, String> of(Api api, Given given) {
        var theirs = new TheirThings(api, given);
        theirs.places();
        theirs.facts();
        theirs.acts();
        theirs.jobs();
        return theirs.known;
    }

    private void keep(String what, Object id) {
        if (String.valueOf(id).isBlank() || known.put(what, String.valueOf(id)) != null) {
            throw new IllegalStateException("none or two of " + what);
        }
    }

    private Answer made(String what, String path, Object body) {
        var answer = staff.with("Idempotency-Key", UUID.randomUUID().toString()).post(path, body).expect(201);
        // under its own name where more is told of it
        var own = answer.at("/" + what.replace(" ", "") + "/id");
        keep(what, own.isMissingNode() ? answer.id() : own.asString());
        return answer;
    }

    private void places() {
        var read = staff.get("/api/customers/" + customer).expect(200);
        keep("customer", customer);
        keep("customer code", read.text("/code"));
        keep("customer name", read.text("/name"));
        keep("site", site);
        keep("site code", staff.get("/api/sites/" + site).expect(200).text("/code"));
        var vehicle = Given.depot();
        vehicle.put("kind", "VEHICLE");
        made("vehicle", "/api/sites", vehicle);
        var code = "R" + Given.serial();
        keep("route code", code);
        made("route", "/api/routes", Map.of("code", code, "name", "Loop " + code, "depot", given.site(null), "visits",
                Map.of("from", "2026-11-01", "rule", "FREQ=WEEKLY;BYDAY=TH", "onHolidays", true), "stops",
                List.of(site)));
        keep("calendar", staff.post("/api/calendar-feeds", Map.of("name", "theirs", "filter",
                Map.of("customer", customer))).expect(201)
                .id());
        keep("portal key", staff.post("/api/keys", Map.of("name", "their portal", "roles", List.of("PORTAL"),
                "customerId", customer)).expect(201).id());
    }

    private void facts() {
        keep("container", container);
        keep("tag", tag);
        var path = "/api/containers/" + container;
        made("part", path + "/parts", Map.of("kind", "RELIEF_VALVE", "manufactured", "2026-05", "fittedOn",
                "2026-11-01"));
        made("requalification", path + "/requalifications", Sheets.visual(Sheets.approved(api)));
        made("repair", path + "/repairs", Map.of("performedOn", "2026-11-12", "kind", "REPAIR", "requalifier",
                Sheets.approved(api), "work", "foot ring welded on anew", "marksTransferred", true, "certification",
                "Repaired in accordance with 49 CFR 180.211"));
        made("extinguisher", "/api/sites/" + site + "/extinguishers", Map.of("label", "north gate", "type",
                "DRY_CHEMICAL_STORED_PRESSURE", "ratingBC", 40));
        keep("movement", staff.get(path + "/movements").expect(200).text("/items/0/id"));
        made("sighting", "/api/sightings", Map.of("containerId", container, "site", site, "occurredAt",
                "2026-11-21T08:00:00Z"));
        made("fill", "/api/fills",
                Map.of("containerId", container, "filledAt", "2026-11-22T11:00:00Z", "lookedAt", true,
                        "specificGravity", 0.508, "netAfterLb", 19));
        keep("hold", staff.post(path + "/holds", Map.of("reason", "DENTED")).expect(201).text("/hold/id"));
        var tank = Given.cylinder();
        tank.putAll(Map.of("kind", "STATIONARY_TANK", "specification", "ASME", "waterCapacity", "499 gal"));
        tank.remove("tare");
        tank.remove("coated");
        var at = given.registered(tank);
        given.moved(at, site, "2026-11-20T09:00:00Z");
        keep("tank", at);
        keep("reading", staff.post("/api/readings", Map.of("containerId", at, "percent", 41.5, "takenAt",
                "2026-11-24T06:00:00Z", "source", "TELEMETRY")).expect(201).text("/reading/id"));
    }

    private void acts() {
        var read = staff.get("/api/containers/" + container).expect(200);
        var act = staff.with("Idempotency-Key", UUID.randomUUID().toString()).ifMatch(read)
                .post("/api/containers/" + container + "/tags",
                        Map.of("tag", "T2-" + Given.serial(), "reason", "a new label"))
                .expect(201);
        keep("tag act", act.id());
        keep("identity act", staff.with("Idempotency-Key", UUID.randomUUID().toString())
                .ifMatch(staff.get("/api/containers/" + container))
                .post("/api/containers/" + container + "/merges", Map.of("absorbed", given.registered(), "reason",
                        "one cylinder", "setAside", List.of("serial")))
                .expect(201).id());
        made("declaration", "/api/declarations", Map.of("declaredBy", "R. Vance", "declaredOn", "2026-11-24",
                "statement", "All are coated.", "group", Map.of("site", site), "facts", Map.of("coated", true)));
        var batch = "batch-" + Given.serial();
        staff.with("Idempotency-Key", batch).post("/api/scan-batches", Map.of("batchId", batch, "lines",
                List.of(Map.of("id", "1", "kind", "SEEN", "containerId", container, "site", site, "occurredAt",
                        "2026-11-21T08:00:00Z"))));
        keep("scan batch", batch);
        var portal = api.asPortalOf(new CustomerId(customer));
        keep("subscription", portal.post("/api/customers/" + customer + "/notice-subscriptions",
                Map.of("url", "https://endpoint.example/theirs", "kinds", List.of("HOLD"))).expect(201)
                .text("/subscription/id"));
        var product = "P" + Given.serial();
        made("product", "/api/products",
                Map.of("code", product, "lading", "LPG", "specificGravity", 0.508, "declaredBy",
                        "R. Vance", "declaredOn", "2026-11-01"));
        made("requalifier", "/api/requalifiers", Sheets.facility(Sheets.rin()));
        made("recall", "/api/recalls",
                Map.of("maker", "L" + Given.serial(), "issuedBy", "the maker", "reference", "R-7",
                        "occurredAt", "2026-11-20T08:00:00Z"));
        var map = "map-" + Given.serial();
        staff.put("/api/column-maps/" + map, Map.of("columns",
                Map.of("Ser. no.", Map.of("column", "serial"), "Spec", Map.of("column", "specification")))).expect(201);
        keep("column map", map);
    }

    private void jobs() {
        keep("import", new Ledger().row("site", known.get("site code")).load(api, Ledger.declaration()).id());
        keep("plan", over("/api/pull-plans", Map.of("depot", given.site(null), "months", 2, "shop",
                Map.of("perWeek", 5, "weeks", List.of()))));
        keep("export", over("/api/schedule-exports", Map.of("formats", List.of("CSV"))));
        keep("file",
                staff.get("/api/schedule-exports/" + known.get("export")).expect(200).text("/manifest/files/0/name"));
    }

    /** The id of the job, once it is done. */
    private String over(String path, Object body) {
        var id = staff.with("Idempotency-Key", UUID.randomUUID().toString()).post(path, body).expect(202).id();
        for (int tries = 0; tries < 3600; tries++) {
            if (staff.get(path + "/" + id).expect(200).text("/status").equals("DONE")) {
                return id;
            }
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
        throw new AssertionError(path + "/" + id + " is not done");
    }
}
