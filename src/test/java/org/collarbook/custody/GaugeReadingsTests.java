package org.collarbook.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

@RegisterTest
class GaugeReadingsTests {

    private final Api api;
    private final Given given;
    private final Tables tables;

    GaugeReadingsTests(Api api, Given given, Tables tables) {
        this.api = api;
        this.given = given;
        this.tables = tables;
    }

    private UUID tank(@Nullable String tag) {
        var body = Given.cylinder();
        body.put("kind", "STATIONARY_TANK");
        body.put("specification", "ASME");
        body.put("waterCapacity", "500 gal");
        body.put("servicePressure", 250);
        body.put("tag", tag);
        body.remove("tare");
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        return id;
    }

    private static Map<String, @Nullable Object> reading(UUID tank, Object percent, String at) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("containerId", tank);
        body.put("percent", percent);
        body.put("takenAt", at);
        body.put("source", "TELEMETRY");
        return body;
    }

    @Test
    void keepsWhatTheGaugeShowedTheLatestFirst() {
        var tag = "G-" + Given.serial();
        var tank = tank(tag);
        var filler = api.as(Role.FILLER);
        var first = filler.post("/api/readings", Map.of("tag", tag, "percent", 61.25, "takenAt",
                "2026-11-25T05:30:00Z", "source", "READ_BY_PERSON")).expect(201);
        assertThat(first.header("Location")).isEqualTo("/api/containers/" + tank + "/readings");
        // half past eleven at night in Chicago
        assertThat(first.text("/reading/takenOn")).isEqualTo("2026-11-24");
        filler.post("/api/readings", reading(tank, 60, "2026-11-25T08:00:00Z")).expect(201);
        filler.post("/api/readings", reading(tank, 62, "2026-11-25T01:00:00Z")).expect(201);
        var path = "/api/containers/" + tank + "/readings?size=2";
        var page = api.as(Role.DISPATCHER).get(path).expect(200);
        assertThat(page.at("/items").findValuesAsString("percent")).containsExactly("60.00", "61.25");
        var next = api.as(Role.DISPATCHER).get(path + "&cursor=" + page.text("/next")).expect(200);
        assertThat(next.at("/items").findValuesAsString("percent")).containsExactly("62.00");
        assertThat(next.at("/next").isMissingNode()).isTrue();
        assertThat(api.as(Role.CLERK).get("/api/audit/verification?container=" + tank).at("/broken")).isEmpty();
        assertThat(api.as(Role.CLERK).get("/api/containers/" + tank + "/history").expect(200).body())
                .contains("GAUGED");
    }

    @Test
    void aRepeatedDeliveryIsHarmlessAndAnotherPercentageIsNot() {
        var tank = tank(null);
        var filler = api.as(Role.FILLER);
        var body = reading(tank, 55.5, "2026-11-25T08:00:00Z");
        var first = filler.post("/api/readings", body).expect(201);
        tables.unchangedBy(() -> {
            var second = filler.post("/api/readings", body).expect(200);
            assertThat(second.at("/repeated").asBoolean()).isTrue();
            assertThat(second.text("/reading/id")).isEqualTo(first.text("/reading/id"));
        });
        var other = reading(tank, 54, "2026-11-25T08:00:00Z");
        tables.unchangedBy(() -> assertThat(filler.post("/api/readings", other)
                .expectProblem(409, "ALREADY_RECORDED").text("/reading")).isEqualTo(first.text("/reading/id")));
        other.put("source", "READ_BY_PERSON");
        filler.post("/api/readings", other).expect(201);
    }

    @Test
    void aKeyIsAnsweredOnce() {
        var body = reading(tank(null), 40, "2026-11-25T08:00:00Z");
        var keyed = api.as(Role.YARD).with("Idempotency-Key", UUID.randomUUID().toString());
        keyed.post("/api/readings", body).expect(201);
        assertThat(keyed.post("/api/readings", body).expect(201).header("Idempotent-Replay")).isEqualTo("true");
        body.put("percent", 41);
        keyed.post("/api/readings", body).expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
    }

    @Test
    void whatCannotBeIsRefusedAllAtOnce() {
        var tank = tank(null);
        var yard = api.as(Role.YARD);
        tables.unchangedBy(() -> {
            for (var percent : new Object[]{-0.01, 100.01, 33.333, 1e9}) {
                assertThat(yard.post("/api/readings", reading(tank, percent, "2026-11-25T08:00:00Z"))
                        .expectProblem(400, "INVALID_INPUT").errors()).containsEntry("/percent", "OUT_OF_RANGE");
            }
            var body = reading(UUID.randomUUID(), 101, "2026-11-25T13:00:00Z");
            body.put("source", "a bird");
            body.put("tag", "X");
            assertThat(yard.post("/api/readings", body).expectProblem(400, "INVALID_INPUT").errors())
                    .containsEntry("/percent", "OUT_OF_RANGE").containsEntry("/takenAt", "IN_THE_FUTURE")
                    .containsEntry("/source", "UNKNOWN_WORD").containsEntry("/tag", "TOO_MANY");
            assertThat(yard.post("/api/readings", Map.of()).expectProblem(400, "INVALID_INPUT").errors())
                    .containsOnlyKeys("/tag", "/percent", "/takenAt", "/source");
            assertThat(yard.post("/api/readings", reading(UUID.randomUUID(), 1, "2026-11-25T08:00:00Z"))
                    .expectProblem(400, "INVALID_INPUT").errors()).containsEntry("/containerId", "UNKNOWN_CONTAINER");
        });
        for (var edge : new Object[]{0, 100}) {
            yard.post("/api/readings", reading(tank, edge, "2026-11-25T0" + edge.toString().length() + ":00:00Z"))
                    .expect(201);
        }
    }

    @Test
    void aCylinderIsWeighed() {
        var cylinder = given.registered();
        tables.unchangedBy(() -> assertThat(api.as(Role.FILLER)
                .post("/api/readings", reading(cylinder, 50, "2026-11-25T08:00:00Z"))
                .expectProblem(409, "NOT_FOR_THIS_KIND").text("/kind")).isEqualTo("CYLINDER"));
    }

    @Test
    void aPortalNeitherWritesNorReadsThem() {
        var tank = tank(null);
        var portal = api.asPortalOf(new CustomerId(given.customer()));
        portal.post("/api/readings", reading(tank, 50, "2026-11-25T08:00:00Z")).expectProblem(403, "FORBIDDEN");
        portal.get("/api/containers/" + tank + "/readings").expectProblem(403, "FORBIDDEN");
    }

    /** Neither an empty gauge nor a full one changes a judgement. */
    @Test
    void itDecidesNothing() {
        var tank = tank(null);
        var assessment = "/api/containers/" + tank + "/assessment";
        var before = api.as(Role.CLERK).get(assessment).expect(200);
        api.as(Role.FILLER).post("/api/readings", reading(tank, 0, "2026-11-25T08:00:00Z")).expect(201);
        api.as(Role.FILLER).post("/api/readings", reading(tank, 100, "2026-11-25T09:00:00Z")).expect(201);
        assertThat(api.as(Role.CLERK).get(assessment).expect(200).json()).isEqualTo(before.json());
    }
}
