package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

@RegisterTest
class CorrectionTests {

    private final Api.Session clerk;
    private final Tables tables;
    private final JdbcClient jdbc;

    CorrectionTests(Api api, Tables tables, JdbcClient jdbc) {
        this.clerk = api.as(Role.CLERK);
        this.tables = tables;
        this.jdbc = jdbc;
    }

    private static Map<String, @Nullable Object> because(Map<String, @Nullable Object> body, String reason) {
        var correction = new LinkedHashMap<>(body);
        correction.put("reason", reason);
        return correction;
    }

    @Test
    void keepsEveryEarlierValueWithTheReason() {
        var body = Given.cylinder();
        var created = clerk.post("/api/containers", body).expect(201);
        var was = body.get("serial");
        body.put("serial", was + "8");
        body.put("coated", null);

        var corrected = clerk.ifMatch(created)
                .put("/api/containers/" + created.id(), because(body, "B read as 8 at the dock")).expect(200);

        assertThat(corrected.etag()).isEqualTo("\"1\"");
        assertThat(corrected.text("/serial")).isEqualTo(was + "8");
        assertThat(corrected.at("/coated").isMissingNode()).isTrue();
        var kept = jdbc.sql("""
                select field, was, became, reason from mark_correction where container_id = cast(? as uuid)
                order by field""").param(created.id()).query().listOfRows();
        assertThat(kept).hasSize(2);
        assertThat(kept.getFirst()).containsEntry("field", "coated").containsEntry("was", "true")
                .containsEntry("became", null);
        assertThat(kept.getLast()).containsEntry("field", "serial").containsEntry("was", was)
                .containsEntry("became", was + "8").containsEntry("reason", "B read as 8 at the dock");
    }

    @Test
    void theFactsThatOtherJurisdictionsAskForAreKeptAndCorrectedLikeAnyOther() {
        var body = Given.cylinder();
        var asked = Map.of("reliefValve", "INTERNAL", "extendedPeriod", "COP31", "schemeDue", "2031-05",
                "outOfServiceSince", "2026-02-28");
        body.putAll(asked);
        var created = clerk.post("/api/containers", body).expect(201);
        asked.forEach((field, value) -> assertThat(created.text("/" + field)).isEqualTo(value));

        body.putAll(Map.of("reliefValve", "EXTERNAL", "extendedPeriod", "NONE", "schemeDue", "2030-12"));
        body.put("outOfServiceSince", null);
        clerk.ifMatch(created).put("/api/containers/" + created.id(), because(body, "seen in the yard")).expect(200);

        assertThat(jdbc.sql("""
                select concat_ws(' ', field, was, became) from mark_correction where container_id = cast(? as uuid)
                order by field""").param(created.id()).query(String.class).list())
                .containsExactly("extendedPeriod COP31 NONE", "outOfServiceSince 2026-02-28",
                        "reliefValve INTERNAL EXTERNAL", "schemeDue 2031-05 2030-12");
    }

    @Test
    void whatIsGivenBackAsItWasReadChangesNothing() {
        var created = clerk.post("/api/containers", Given.cylinder()).expect(201);
        var body = Given.cylinder();
        body.put("serial", created.text("/serial"));
        body.put("manufactured", "2004-05");
        body.put("tare", "17 lb");

        tables.unchangedBy(() -> {
            var same = clerk.ifMatch(created).put("/api/containers/" + created.id(), because(body, "none"))
                    .expect(200);
            assertThat(same.json()).isEqualTo(created.json());
        });
    }

    @Test
    void asksForTheVersionThatWasRead() {
        var body = Given.cylinder();
        var created = clerk.post("/api/containers", body).expect(201);
        var path = "/api/containers/" + created.id();
        body.put("tare", "18 lb");

        tables.unchangedBy(() -> {
            clerk.put(path, because(body, "weighed")).expectProblem(428, "IF_MATCH_REQUIRED");
            clerk.with("If-Match", "\"7\"").put(path, because(body, "weighed")).expectProblem(412, "STALE_VERSION");
        });
        clerk.ifMatch(created).put(path, because(body, "weighed")).expect(200);
        tables.unchangedBy(() -> clerk.ifMatch(created).put(path, because(body, "weighed again"))
                .expectProblem(412, "STALE_VERSION"));
    }

    @Test
    void neverGivesTwoContainersTheSameMarksOrTag() {
        var first = Given.cylinder();
        first.put("tag", Given.serial());
        var id = clerk.post("/api/containers", first).expect(201).id();
        var second = Given.cylinder();
        var created = clerk.post("/api/containers", second).expect(201);
        var path = "/api/containers/" + created.id();

        tables.unchangedBy(() -> {
            var tagged = because(second, "tag found");
            tagged.put("tag", first.get("tag"));
            assertThat(clerk.ifMatch(created).put(path, tagged).expectProblem(409, "TAG_IN_USE")
                    .text("/container/id")).isEqualTo(id);
            assertThat(clerk.ifMatch(created).put(path, because(first, "misread"))
                    .expectProblem(409, "NATURAL_KEY_TAKEN").text("/container/id")).isEqualTo(id);
        });
    }

    @Test
    void refusesWithoutReasonAndForUnknownContainers() {
        var body = Given.cylinder();
        var created = clerk.post("/api/containers", body).expect(201);

        tables.unchangedBy(() -> {
            assertThat(clerk.ifMatch(created).put("/api/containers/" + created.id(), body)
                    .expectProblem(400, "INVALID_INPUT").errors()).isEqualTo(Map.of("/reason", "MISSING"));
            clerk.ifMatch(created).put("/api/containers/00000000-0000-7000-8000-000000000000", because(body, "x"))
                    .expectProblem(404, "NOT_FOUND");
            clerk.get("/api/containers/00000000-0000-7000-8000-000000000000").expectProblem(404, "NOT_FOUND");
        });
    }
}
