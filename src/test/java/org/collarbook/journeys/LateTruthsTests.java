package org.collarbook.journeys;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.inspection.Sheets;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What turns out to have been otherwise never makes a yes of what was seen in the meantime. */
@RegisterTest
class LateTruthsTests {

    private final Api api;
    private final Given given;
    private final Tables tables;

    LateTruthsTests(Api api, Given given, Tables tables) {
        this.api = api;
        this.given = given;
        this.tables = tables;
    }

    private UUID inDate(Map<String, @Nullable Object> body) {
        body.put("manufactured", "6-20");
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-01T09:00:00Z");
        return id;
    }

    private Answer fill(Map<String, Object> which, Map<String, Object> told) {
        var body = new LinkedHashMap<String, Object>(which);
        body.put("filledAt", "2026-11-24T11:00:00Z");
        body.put("specificGravity", 0.508);
        body.put("lookedAt", true);
        body.put("netAfterLb", 19);
        body.putAll(told);
        return api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills", body);
    }

    private Answer sent(Map<String, Object> line) {
        return api.as(Role.YARD).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/scan-batches",
                Map.of("batchId", Given.serial(), "lines", List.of(line))).expect(201);
    }

    private List<String> standing(UUID id) {
        return api.as(Role.CLERK).get("/api/containers/" + id + "/holds?standing=true").expect(200).at("/items")
                .findValuesAsString("reason");
    }

    /** A condemnation outlasts a hold only while it stands. */
    @ParameterizedTest
    @CsvSource({"leakFound, true, LEAKING", "netAfterLb, 25, OVERFILLED_OR_DISCHARGED"})
    void whatWasFoundOnACondemnedCylinderOutlivesTheMistake(String field, String value, String reason) {
        var id = inDate(Given.cylinder());
        var rin = Sheets.approved(api);
        var condemned = api.as(Role.YARD).post("/api/containers/" + id + "/requalifications", Sheets.condemned(rin))
                .expect(201).id();
        var line = new LinkedHashMap<String, Object>(Map.of("id", Given.serial(), "kind", "FILL", "containerId", id,
                "occurredAt", "2026-11-24T11:00:00Z", "specificGravity", 0.508, "lookedAt", true, "netAfterLb", 19,
                "leakChecked", true));
        line.put(field, field.equals("leakFound") ? true : Integer.valueOf(value));
        assertThat(sent(line).text("/lines/0/outcome")).isEqualTo("RECORDED_NOT_ALLOWED");
        api.as(Role.ADMINISTRATOR).post("/api/requalifications/" + condemned + "/corrections",
                Sheets.correction("another cylinder", null)).expect(201);
        assertThat(standing(id)).contains(reason);
        tables.unchangedBy(() -> fill(Map.of("containerId", id), Map.of("filledAt", "2026-11-25T11:00:00Z"))
                .expectProblem(409, "FILL_REFUSED"));
    }

    @Test
    void aRecallHoldsACondemnedCylinderToo() {
        var body = Given.cylinder();
        body.put("maker", "LT" + Given.serial().hashCode() % 100_000);
        var id = inDate(body);
        var condemned = api.as(Role.YARD)
                .post("/api/containers/" + id + "/requalifications", Sheets.condemned(Sheets.approved(api))).expect(201)
                .id();
        api.as(Role.CLERK).post("/api/recalls", Map.of("maker", String.valueOf(body.get("maker")), "issuedBy",
                "the maker")).expect(201);
        api.as(Role.ADMINISTRATOR).post("/api/requalifications/" + condemned + "/corrections",
                Sheets.correction("another cylinder", null)).expect(201);
        assertThat(standing(id)).containsExactly("RECALLED");
    }

    /** The tag says who was scanned only while it hung there. */
    @Test
    void whatHappenedUnderATagBeforeItMovedIsNotTheNextBearers() {
        var tag = "LT-" + Given.serial();
        var first = Given.cylinder();
        first.put("tag", tag);
        var before = inDate(first);
        var after = inDate(Given.cylinder());
        var clerk = api.as(Role.CLERK);
        clerk.ifMatch(clerk.get("/api/containers/" + before)).post("/api/containers/" + before + "/tag-removals",
                Map.of("reason", "worn")).expect(201);
        clerk.ifMatch(clerk.get("/api/containers/" + after)).post("/api/containers/" + after + "/tags",
                Map.of("tag", tag, "reason", "used again")).expect(201);
        var line = sent(Map.of("id", Given.serial(), "kind", "HOLD", "tag", tag, "reason", "LEAKING", "occurredAt",
                "2026-11-24T11:00:00Z"));
        assertThat(line.text("/lines/0/code")).as(line.body()).isEqualTo("TAG_MOVED_SINCE");
        assertThat(line.body()).contains(before.toString());
        assertThat(standing(after)).isEmpty();
        tables.unchangedBy(() -> fill(Map.of("tag", tag), Map.of()).expectProblem(409, "TAG_MOVED_SINCE"));
    }

    /** A smaller cylinder than was thought is overfilled now, not only then. */
    @Test
    void whatTurnsOutToBeTooMuchIsHeldWhileItIsInThere() {
        var id = inDate(Given.cylinder());
        fill(Map.of("containerId", id), Map.of()).expect(201);
        var clerk = api.as(Role.CLERK);
        clerk.ifMatch(clerk.get("/api/containers/" + id)).post("/api/containers/" + id + "/mark-corrections",
                Map.of("marks", Map.of("waterCapacity", "26.1 lb"), "reason", "misread")).expect(201);
        assertThat(clerk.get("/api/containers/" + id + "/fills").expect(200).at("/items/0/flagged").asBoolean())
                .isTrue();
        assertThat(standing(id)).containsExactly("OVERFILLED_OR_DISCHARGED");
    }

    @Test
    void aListWithNothingInItIsRefused() {
        var one = inDate(Given.cylinder());
        var other = inDate(Given.cylinder());
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("absorbed", other);
        body.put("reason", "one cylinder");
        body.put("setAside", Arrays.asList((Object) null));
        tables.unchangedBy(() -> assertThat(api.as(Role.CLERK).post("/api/containers/" + one + "/merges", body)
                .expectProblem(400, "INVALID_INPUT").errors()).containsKey("/setAside"));
    }
}
