package org.collarbook.compliance.history;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.jspecify.annotations.Nullable;

/** What happens to a container, over HTTP. */
record Life(Api api, Given given) {

    private static final AtomicInteger NUMBER = new AtomicInteger();

    /** Of June 2020, at a depot from April on. */
    UUID begins() {
        return begins(Given.cylinder(), "6-20");
    }

    UUID begins(Map<String, @Nullable Object> body, String manufactured) {
        body.put("manufactured", manufactured);
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-04-20T09:00:00Z");
        return id;
    }

    Answer filled(UUID container, String at) {
        return api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills",
                Map.of("containerId", container, "filledAt", at, "specificGravity", 0.508, "netAfterLb", 19.5,
                        "lookedAt", true, "leakChecked", true))
                .expect(201);
    }

    /** The id of the hold. */
    String held(UUID container, String reason, String at) {
        return api.as(Role.YARD).post("/api/containers/" + container + "/holds",
                Map.of("reason", reason, "note", "seen at the dock", "occurredAt", at)).expect(201).text("/hold/id");
    }

    void lifted(String hold) {
        api.as(Role.CLERK).post("/api/holds/" + hold + "/lifts", Map.of("by", "COMPETENT_PERSON", "name", "R. Amsel",
                "qualification", "inspector")).expect(201);
    }

    void emptied(UUID container, String at) {
        api.as(Role.FILLER).post("/api/containers/" + container + "/emptyings", Map.of("emptiedAt", at, "how",
                "came back")).expect(201);
    }

    void seen(UUID container, UUID site, String at) {
        api.as(Role.YARD).post("/api/sightings", Map.of("containerId", container, "site", site, "occurredAt", at))
                .expect(201);
    }

    /** Taken away at the one site, and left at the other two hours later, whatever the rules say of that. */
    void swapped(UUID container, UUID from, UUID to, String day) {
        var vehicle = given.site(null);
        var named = Map.of("containerId", container);
        api.as(Role.YARD).post("/api/swaps", Map.of("site", from, "vehicle", vehicle, "out", named, "occurredAt",
                day + "T09:00:00Z")).expect(201);
        api.as(Role.YARD).post("/api/swaps", Map.of("site", to, "vehicle", vehicle, "in", named, "happened", true,
                "occurredAt", day + "T11:00:00Z")).expect(201);
    }

    String recalled(String maker, String occurredAt) {
        return api.as(Role.CLERK).post("/api/recalls", Map.of("maker", maker, "issuedBy", "the maker", "reference",
                "R-7", "occurredAt", occurredAt)).expect(201).text("/recall/id");
    }

    /** The RIN of a facility approved from 2022 through the first day of 2027. */
    String facility() {
        var rin = "Z%03d".formatted(NUMBER.getAndIncrement());
        api.as(Role.CLERK).post("/api/requalifiers", Map.of("rin", rin, "name", "Bench " + rin, "approval",
                Map.of("from", "2022-01-01", "expires", "2027-01-01"))).expect(201);
        return rin;
    }

    static Map<String, @Nullable Object> visual(String rin, String day, String dents) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("performedOn", day);
        body.put("method", "EXTERNAL_VISUAL");
        body.put("requalifier", rin);
        body.put("operator", "M. Holt");
        body.put("coating", "painted, sound");
        body.put("owner", "Owner and Sons");
        body.put("visual", Map.of("items", List.of(Map.of("item", "CORROSION", "finding", "SATISFACTORY"),
                Map.of("item", "DENTS", "finding", dents, "note", "looked at"))));
        body.put("disposition", dents.equals("DEFECT") ? "to the maker for repair" : null);
        return body;
    }

    static Map<String, @Nullable Object> condemned(String rin, String day) {
        var body = visual(rin, day, "SATISFACTORY");
        body.put("grounds", List.of("WEAKENING_CRACKS"));
        body.put("disposition", "cracked at the weld");
        return body;
    }

    /** The id of the record. */
    String requalified(UUID container, Map<String, @Nullable Object> sheet) {
        return api.as(Role.YARD).post("/api/containers/" + container + "/requalifications", sheet).expect(201).id();
    }

    /** The id of the entry that takes its place; with no sheet it is void. */
    String corrected(String requalification, @Nullable Map<String, @Nullable Object> sheet) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("reason", "read from another cylinder");
        body.put(sheet == null ? "void" : "record", sheet == null ? true : sheet);
        return api.as(Role.ADMINISTRATOR).post("/api/requalifications/" + requalification + "/corrections", body)
                .expect(201).id();
    }

    String repaired(UUID container, String rin, String work) {
        return api.as(Role.YARD).post("/api/containers/" + container + "/repairs", Map.of("performedOn", "2026-11-12",
                "kind", "REPAIR", "requalifier", rin, "work", work, "marksTransferred", true, "certification",
                "Repaired in accordance with 49 CFR 180.211, M. Holt")).expect(201).id();
    }

    void repairVoid(String repair) {
        api.as(Role.YARD).post("/api/repairs/" + repair + "/corrections", Map.of("void", true, "reason",
                "of another cylinder")).expect(201);
    }
}
