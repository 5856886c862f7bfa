package org.collarbook.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

import tools.jackson.databind.JsonNode;

/** Who asked for which change, and who was denied: one line each, and no secret in it. */
@RegisterTest
class AccessLogTests {

    private static final String CODE_WORD = "nobody-reads-this-twice";

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;
    private final Flyway flyway;

    AccessLogTests(Api api, Given given, JdbcClient jdbc, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
        this.flyway = flyway;
    }

    private record Issued(String id, String key) {}

    private Issued key(Map<String, Object> body) {
        var answer = api.as(Role.ADMINISTRATOR).post("/api/keys", body).expect(201);
        return new Issued(answer.id(), answer.text("/key"));
    }

    private List<JsonNode> lines(String filter) {
        var lines = new ArrayList<JsonNode>();
        var next = "";
        do {
            var page = api.as(Role.ADMINISTRATOR).get("/api/access-log?size=2&" + filter + "&cursor=" + next)
                    .expect(200);
            page.at("/items").forEach(lines::add);
            next = page.json().path("next").asString("");
        } while (!next.isEmpty());
        return lines;
    }

    private static String told(JsonNode line) {
        return line.at("/method").asString() + " " + line.at("/endpoint").asString("") + " " + line.at("/ids") + " "
                + line.at("/status").asInt() + (line.at("/denied").asBoolean() ? " denied" : "");
    }

    @Test
    void eachWriteAndEachDenialOfAJourneyHasOneLine() {
        var container = given.registered();
        var yard = key(Map.of("name", "yard of the journey", "roles", List.of("yard")));
        var session = api.withKey(yard.key());
        session.get("/api/containers/" + container).expect(200);
        session.post("/api/fill-check", Map.of("lines", List.of())).expect(400);
        session.post("/api/containers/" + container + "/holds", Map.of("reason", "DENTED", "note", CODE_WORD))
                .expect(201);
        var made = session.post("/api/containers", Given.cylinder()).expect(201).id();
        session.post("/api/sightings", "{\"site\":\"" + CODE_WORD + "\"}").expect(400);
        session.get("/api/keys?" + CODE_WORD + "=1").expectProblem(403, "FORBIDDEN");
        session.put("/api/sites/" + container, "{}").expectProblem(403, "FORBIDDEN");
        session.delete("/api/keys/" + yard.key()).expectProblem(403, "FORBIDDEN");
        session.post("/api/nothing/" + CODE_WORD, "{}").expectProblem(404, "NOT_FOUND");
        session.get("/api/nothing/" + CODE_WORD).expectProblem(404, "NOT_FOUND");
        var lines = lines("caller=" + yard.id());
        assertThat(lines.reversed()).extracting(AccessLogTests::told).containsExactly(
                "POST /api/containers/*/holds [\"" + container + "\"] 201",
                "POST /api/containers [\"" + made + "\"] 201",
                "POST /api/sightings [] 400", "GET /api/keys [] 403 denied",
                "PUT /api/sites/* [\"" + container + "\"] 403 denied", "DELETE /api/keys/* [\"?\"] 403 denied",
                "POST  [] 404");
        assertThat(lines).allSatisfy(line -> {
            assertThat(line.at("/caller").asString()).isEqualTo("yard of the journey");
            assertThat(line.at("/at").asString()).isEqualTo("2026-11-25T12:00:00Z");
        });
        assertThat(lines("denied=true&caller=" + yard.id())).hasSize(3);
        assertThat(lines("method=PUT&caller=" + yard.id())).hasSize(1);
        assertThat(lines("before=2026-11-25T12:00:00Z&caller=" + yard.id())).isEmpty();
        assertThat(lines("from=2026-11-25T12:00:00Z&endpoint=/api/sightings&caller=" + yard.id())).hasSize(1);
        assertNothingSecretIn(yard.key());
    }

    private void assertNothingSecretIn(String key) {
        assertThat(jdbc.sql("select count(*) from access_log l where strpos(l::text, ?) > 0 or strpos(l::text, ?) > 0"
                + " or strpos(l::text, 'Bearer') > 0").params(key.substring(3), CODE_WORD).query(Long.class).single())
                .isZero();
    }

    private List<String> lineOf(Answer answer) {
        return jdbc.sql("select concat_ws(' ', coalesce(caller, 'nobody'), method, endpoint, status, denied)"
                + " from access_log where request_id = ?").param(UUID.fromString(answer.header("X-Request-Id")))
                .query(String.class).list();
    }

    @Test
    void strangersAndPortalsThatAskForAnothersAreDenied() {
        var stranger = "cb_" + "Zz09-_x".repeat(7).substring(0, 43);
        assertThat(lineOf(api.withKey(stranger).get("/api/keys").expect(401)))
                .containsExactly("nobody GET /api/keys 401 t");
        assertThat(lineOf(api.anonymous().post("/api/containers", CODE_WORD).expect(401)))
                .containsExactly("nobody POST /api/containers 401 t");
        assertThat(lineOf(api.anonymous().get("/calendars/" + CODE_WORD + ".ics").expect(404))).isEmpty();
        var portal = api.withKey(key(Map.of("name", "a portal", "roles", List.of("portal"), "customerId",
                given.customer())).key());
        assertThat(lineOf(portal.get("/api/portal/sites/" + given.site(given.customer())).expect(404)))
                .containsExactly("a portal GET /api/portal/sites/* 404 t");
        assertNothingSecretIn(stranger);
    }

    @Test
    void aSlashAtTheEndIsNoId() {
        for (var path : List.of("/api/sites/", "/api/keys/", "/api/imports/", "/api/portal/containers/")) {
            api.anonymous().get(path).expectProblem(401, "KEY_REQUIRED");
            assertThat(api.as(Role.ADMINISTRATOR).get(path).status()).as(path).isIn(404, 405);
        }
        assertThat(api.as(Role.ADMINISTRATOR).delete("/api/keys/").status()).isIn(404, 405);
    }

    @Test
    void aLineThatCannotBeWrittenDoesNotUndoWhatWasRecorded() throws SQLException {
        try {
            asOwner("revoke insert on access_log from collarbook_app");
            var answer = api.as(Role.CLERK).post("/api/customers", Map.of("code", "L" + Given.serial(), "name", "x"))
                    .expect(201);
            assertThat(lineOf(answer)).isEmpty();
        } finally {
            asOwner("grant insert on access_log to collarbook_app");
        }
    }

    private void asOwner(String statement) throws SQLException {
        try (var owner = flyway.getConfiguration().getDataSource().getConnection();
                var sql = owner.createStatement()) {
            sql.execute(statement);
        }
    }
}
