package org.collarbook.schedule.packet;

import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.inspection.Sheets;
import org.collarbook.intake.Ledger;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;

/** A cylinder to which everything has happened that a packet tells of, over HTTP; invented names. */
record RichLife(Api api, Given given, UUID id, UUID depot, UUID customer, String rin) {

    static RichLife of(Api api, Given given) {
        var serial = Given.serial();
        new Ledger().row("serial", serial, "manufactured", "6-20", "tag", "OLD" + serial).load(api,
                Ledger.declaration());
        var id = UUID.fromString(api.as(Role.CLERK).get("/api/containers?serial=" + serial).expect(200)
                .text("/items/0/id"));
        var life = new RichLife(api, given, id, given.site(null), given.site(given.customer()),
                Sheets.approved(api));
        life.goesOn();
        return life;
    }

    String path(String under) {
        return "/api/containers/" + id + under;
    }

    private Answer post(String under, Object body) {
        return api.as(Role.YARD).post(path(under), body).expect(201);
    }

    private void goesOn() {
        given.moved(id, depot, "2026-04-20T09:00:00Z");
        var read = api.as(Role.YARD).get(path("")).expect(200);
        api.as(Role.YARD).ifMatch(read).post(path("/tags"), Map.of("tag", "NEW" + Given.serial(), "reason",
                "the old tag was burnt")).expect(201);
        post("/parts", Map.of("kind", "RELIEF_VALVE", "maker", "Invented Valve Works", "model", "RV-1", "manufactured",
                "2026-01", "fittedOn", "2026-05-02"));
        held();
        requalified();
        post("/repairs", Map.of("performedOn", "2026-11-12", "kind", "REPAIR", "requalifier", rin, "work",
                "foot ring welded on anew", "marksTransferred", true, "certification",
                "Repaired in accordance with 49 CFR 180.211, M. Holt"));
        filledAndFlagged();
        api.as(Role.YARD).post("/api/sightings", Map.of("containerId", id, "site", customer, "occurredAt",
                "2026-11-24T09:00:00Z")).expect(201);
    }

    private void held() {
        var hold = post("/holds", Map.of("reason", "VALVE_DEFECT", "note", "hand wheel is loose", "occurredAt",
                "2026-06-01T09:00:00Z")).text("/hold/id");
        api.as(Role.CLERK).post("/api/holds/" + hold + "/lifts", Map.of("by", "COMPETENT_PERSON", "name", "R. Amsel",
                "qualification", "valve fitter")).expect(201);
        post("/holds", Map.of("reason", "DENTED", "note", "a dent below the collar", "occurredAt",
                "2026-06-03T09:00:00Z"));
    }

    /** The dent is answered by a test that was repeated; another sheet was of another cylinder, and is void. */
    private void requalified() {
        var sheet = Sheets.volumetric(rin);
        sheet.put("performedOn", "2026-11-10");
        sheet.put("repeats", List.of(Map.of("testPressurePsig", 470, "reason", "APPARATUS_FAILED", "note",
                "O-ring blown", "expansion", Map.of("total", "90 cm3", "permanent", "80 cm3"))));
        sheet.put("coating", "painted, sound");
        sheet.put("tareLb", 16.9);
        sheet.put("disposition", "returned to service");
        post("/requalifications", sheet);
        var mistaken = Sheets.visual(rin);
        mistaken.put("performedOn", "2026-11-11");
        var entry = post("/requalifications", mistaken).id();
        api.as(Role.ADMINISTRATOR).post("/api/requalifications/" + entry + "/corrections",
                Sheets.correction("it was another cylinder", null)).expect(201);
    }

    /** A hold that is told late makes the fill of before one that was not allowed. */
    private void filledAndFlagged() {
        api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills",
                Map.of("containerId", id, "filledAt", "2026-11-20T11:00:00Z", "specificGravity", 0.508, "netAfterLb",
                        19.5, "lookedAt", true, "leakChecked", true))
                .expect(201);
        post("/holds", Map.of("reason", "LEAKING", "note", "smelt at the cage", "occurredAt", "2026-11-18T09:00:00Z"));
    }
}
