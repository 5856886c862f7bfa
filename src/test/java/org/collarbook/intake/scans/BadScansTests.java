package org.collarbook.intake.scans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.intake.scans.Scans.batch;
import static org.collarbook.intake.scans.Scans.fill;
import static org.collarbook.intake.scans.Scans.line;
import static org.collarbook.intake.scans.Scans.outcomes;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What is refused: single lines, with their place, code and way out, and batches as a whole. */
@RegisterTest
class BadScansTests {

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final JdbcClient jdbc;
    private final Scans scans;
    /** Who may change the tables. */
    private final JdbcClient owner;
    private UUID container = new UUID(0, 0);
    private UUID depot = new UUID(0, 0);

    BadScansTests(Api api, Given given, Tables tables, JdbcClient jdbc, Flyway flyway) {
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.jdbc = jdbc;
        this.scans = new Scans(api);
    }

    @BeforeEach
    void aCylinderInDate() {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        container = given.registered(body);
        depot = given.site(null);
        given.moved(container, depot, "2026-11-01T09:00:00Z");
    }

    private Map<String, Long> facts() {
        var counts = new TreeMap<>(tables.counts());
        // that a line was refused is noted
        counts.keySet().removeAll(List.of("scan_batch", "scan_line", "idempotency"));
        return counts;
    }

    private String digest() {
        return tables.digest()
                + jdbc.sql("select md5(string_agg(h::text, ',' order by container_id)) from journal_head h")
                        .query(String.class).single();
    }

    /** Refused in the middle of lines that are recorded; it leaves no fact and no entry. */
    private Answer refused(Object line, String pointer, String code) {
        var facts = facts();
        var digest = digest();
        var alone = scans.send(line).expect(201);
        assertThat(facts()).isEqualTo(facts);
        assertThat(digest()).isEqualTo(digest);
        one(alone, 0, pointer, code);
        var among = scans.send(line("MOVEMENT", container, "2026-11-20T09:00:00Z", "toSite", depot), line,
                line("MOVEMENT", container, "2026-11-21T09:00:00Z", "toSite", depot)).expect(201);
        assertThat(outcomes(among)).containsExactly("RECORDED", "REFUSED", "RECORDED");
        one(among, 1, pointer, code);
        return among;
    }

    private static void one(Answer answer, int place, String pointer, String code) {
        var line = answer.at("/lines/" + place);
        assertThat(line.path("outcome").asString()).as(answer.body()).isEqualTo("REFUSED");
        assertThat(line.path("code").asString()).isEqualTo(code);
        assertThat(line.path("pointer").asString()).isEqualTo("/lines/" + place + pointer);
        assertThat(line.path("accepted").asString()).isNotBlank();
    }

    /** Each of these instead of what the line had. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "FILL | occurredAt | null | /occurredAt | MISSING",
            "FILL | occurredAt | \"yesterday\" | /occurredAt | WRONG_TYPE",
            "FILL | occurredAt | \"2026-11-25T12:05:01Z\" | /occurredAt | IN_THE_FUTURE",
            "FILL | occurredAt | \"1939-12-31T00:00:00Z\" | /occurredAt | OUT_OF_RANGE",
            "FILL | occurredAt | \"2019-01-01T00:00:00Z\" | /occurredAt | BEFORE_MANUFACTURE",
            "FILL | kind | null | /kind | MISSING", "FILL | kind | \"SALE\" | /kind | UNKNOWN_WORD",
            "FILL | kind | 3 | /kind | UNKNOWN_WORD", "FILL | id | null | /id | MISSING",
            "FILL | id | \" \" | /id | MISSING", "FILL | id | 17 | /id | WRONG_TYPE",
            "FILL | id | \"\\u0000\" | /id | INVALID_TEXT", "FILL | id | \"\\ud800\" | /id | INVALID_TEXT",
            "FILL | containerId | null | /tag | MISSING", "FILL | containerId | \"x\" | /containerId | WRONG_TYPE",
            "FILL | containerId | {} | /containerId | WRONG_TYPE",
            "FILL | containerId | \"00000000-0000-7000-8000-000000000000\" | /containerId | UNKNOWN_CONTAINER",
            "FILL | tag | \"CB-1\" | /containerId | TOO_MANY", "FILL | tag | \"\\u0000\" | /containerId | TOO_MANY",
            "FILL | colour | \"red\" | /colour | UNKNOWN_FIELD", "FILL | toSite | null | /toSite | UNKNOWN_FIELD",
            "FILL | netAfterLb | null | /grossLb | MISSING", "FILL | netAfterLb | 0 | /netAfterLb | OUT_OF_RANGE",
            "FILL | netAfterLb | -1 | /netAfterLb | OUT_OF_RANGE",
            "FILL | netAfterLb | 1e999999999 | /netAfterLb | OUT_OF_RANGE",
            "FILL | netAfterLb | 1.0001 | /netAfterLb | OUT_OF_RANGE",
            "FILL | netAfterLb | \"heavy\" | /netAfterLb | WRONG_TYPE",
            "FILL | netAfterLb | [19] | /netAfterLb | WRONG_TYPE", "FILL | grossLb | 36 | /grossLb | TOO_MANY",
            "FILL | heelLb | 20 | /heelLb | OUT_OF_RANGE",
            "FILL | specificGravity | 1.5 | /specificGravity | OUT_OF_RANGE",
            "FILL | liquidTemperatureF | 900 | /liquidTemperatureF | OUT_OF_RANGE",
            "FILL | product | \"\\u0000\" | /product | INVALID_TEXT",
            "FILL | lookedAt | \"si\" | /lookedAt | WRONG_TYPE",
            "FILL | observedOverfill | true | /observedOverfill | NOT_OVERFILLED",
            "MOVEMENT | toSite | null | /toSite | MISSING", "MOVEMENT | toSite | 1 | /toSite | WRONG_TYPE",
            "MOVEMENT | toSite | \"00000000-0000-7000-8000-000000000000\" | /toSite | UNKNOWN_SITE",
            "MOVEMENT | fromSite | \"00000000-0000-7000-8000-000000000000\" | /fromSite | UNKNOWN_SITE",
            "RETURN | toSite | null | /toSite | MISSING", "RETURN | fromSite | null | /fromSite | UNKNOWN_FIELD",
            "RETURN | how | \"burnt off\" | /how | NOT_EMPTY", "RETURN | empty | \"si\" | /empty | WRONG_TYPE",
            "HOLD | reason | null | /reason | MISSING", "HOLD | reason | \"UGLY\" | /reason | UNKNOWN_WORD",
            "HOLD | note | \"\\u0007\" | /note | INVALID_TEXT",
            "HOLD | occurredAt | \"2019-01-01T00:00:00Z\" | /occurredAt | BEFORE_MANUFACTURE"})
    void aLineIsRefusedByFieldAndCode(String kind, String field, String value, String pointer, String code) {
        var fields = line(kind, container, "2026-11-20T10:00:00Z");
        switch (kind) {
            case "FILL" -> fields.putAll(Map.of("specificGravity", 0.508, "netAfterLb", 19, "lookedAt", true));
            case "HOLD" -> fields.put("reason", "DENTED");
            default -> fields.put("toSite", depot);
        }
        fields.remove(field);
        var json = scans.text(fields);
        refused(new Scans.Raw(json.substring(0, json.length() - 1) + ",\"" + field + "\":" + value + "}"), pointer,
                code);
    }

    @ParameterizedTest
    @ValueSource(strings = {"null", "true", "17", "\"FILL\"", "[]", "[{}]"})
    void whatIsNoLineAtAllStopsNoOther(String line) {
        refused(new Scans.Raw(line), "", "WRONG_TYPE");
    }

    @Test
    void anEmptyLineIsToldAllThatIsMissing() {
        var answer = scans.send(Map.of(), Map.of("kind", "FILL")).expect(201);
        one(answer, 0, "/id", "MISSING");
        assertThat(Scans.texts(answer, "/lines/0/errors", "pointer")).containsExactly("/lines/0/id", "/lines/0/kind");
        assertThat(Scans.texts(answer, "/lines/1/errors", "pointer")).containsExactly("/lines/1/id",
                "/lines/1/occurredAt", "/lines/1/tag");
    }

    @Test
    void whatContradictsTheRegisterIsRefused() {
        var elsewhere = given.site(null);
        var disputed = refused(
                line("MOVEMENT", container, "2026-11-20T10:00:00Z", "toSite", depot, "fromSite", elsewhere),
                "/fromSite", "PLACE_DISPUTED");
        assertThat(disputed.text("/lines/1/found")).isEqualTo(elsewhere.toString());
        assertThat(disputed.text("/lines/1/accepted")).contains(depot.toString());
        scans.send(fill(container, "2026-11-20T11:00:00Z"),
                line("RETURN", container, "2026-11-20T12:00:00Z", "toSite", depot, "empty", true)).expect(201);
        refused(fill(container, "2026-11-20T11:00:00Z", "netAfterLb", 3), "", "ALREADY_RECORDED");
        // nothing of a return stays when a part of it is refused
        refused(line("RETURN", container, "2026-11-20T12:00:00Z", "toSite", elsewhere, "empty", true), "",
                "ALREADY_RECORDED");
        refused(line("RETURN", container, "2026-11-20T12:30:00Z", "toSite", UUID.randomUUID(), "empty", true),
                "/toSite", "UNKNOWN_SITE");
        refused(fill(container, "2026-11-20T13:00:00Z", "netAfterLb", null, "grossLb", 17), "/grossLb", "BELOW_TARE");
    }

    @Test
    void aSerialThatSeveralBearIsToldApart() {
        var body = Given.cylinder();
        var serial = Given.serial();
        body.put("serial", serial);
        given.registered(body);
        body.put("maker", "QY");
        var other = given.registered(body);
        var line = line("HOLD", null, "2026-11-20T10:00:00Z", "serial", serial, "reason", "DENTED");
        refused(line, "/serial", "MORE_THAN_ONE");
        line.put("maker", "QY");
        var told = scans.send(line).expect(201);
        assertThat(told.text("/lines/0/containerId")).isEqualTo(other.toString());
        var unknown = line("HOLD", null, "2026-11-20T10:00:00Z", "serial", serial, "maker", "QZ", "reason", "DENTED");
        refused(unknown, "/serial", "UNKNOWN_CONTAINER");
    }

    @Test
    void aCondemnedContainerIsNotHeld() {
        var body = Given.cylinder();
        body.put("specification", "DOT-4E240");
        var id = given.registered(body);
        var burnt = scans.send(line("HOLD", id, "2026-11-20T10:00:00Z", "reason", "FIRE_OR_OVERHEATED")).expect(201);
        assertThat(outcomes(burnt)).containsExactly("RECORDED");
        assertThat(burnt.text("/lines/0/condemned")).isEqualTo("2026-11");
        assertThat(burnt.text("/lines/0/citations/0/section")).isEqualTo("Annex C.3.2.2");
        refused(line("HOLD", id, "2026-11-21T10:00:00Z", "reason", "DENTED"), "", "CONTAINER_CONDEMNED");
    }

    /** What the endpoint of a kind does not let a role do, a line does not either. */
    @ParameterizedTest
    @CsvSource({"FILLER, MOVEMENT, false", "FILLER, RETURN, false", "FILLER, FILL, true", "FILLER, HOLD, true",
            "DISPATCHER, MOVEMENT, true", "DISPATCHER, RETURN, true", "DISPATCHER, EMPTY, false",
            "DISPATCHER, FILL, false", "DISPATCHER, HOLD, true", "YARD, MOVEMENT, true", "YARD, EMPTY, true",
            "YARD, FILL, true", "YARD, HOLD, true", "ADMINISTRATOR, FILL, true"})
    void aLineAsksForTheRolesOfItsKind(Role role, String kind, boolean open) {
        var at = "2026-11-20T10:00:00Z";
        var line = switch (kind) {
            case "FILL" -> fill(container, at);
            case "HOLD" -> line("HOLD", container, at, "reason", "DENTED");
            case "EMPTY" -> line("RETURN", container, at, "toSite", depot, "empty", true);
            default -> line(kind, container, at, "toSite", depot);
        };
        var facts = facts();
        var answer = scans.send(role, batch(List.of(line))).expect(201);
        assertThat(outcomes(answer)).as(answer.body()).containsExactly(open ? "RECORDED" : "REFUSED");
        if (!open) {
            one(answer, 0, "/kind", "FORBIDDEN");
            assertThat(answer.text("/lines/0/accepted")).contains("yard").doesNotContain(role.word() + ",");
            assertThat(facts()).isEqualTo(facts);
        }
    }

    @Test
    void aBatchIsRefusedAsAWholeWhenItIsNone() {
        var line = fill(container, "2026-11-20T10:00:00Z");
        tables.unchangedBy(() -> {
            whole(Map.of(), "/batchId", "MISSING", "/lines", "MISSING");
            whole(Map.of("batchId", "b", "lines", List.of()), "/lines", "TOO_FEW");
            whole(Map.of("batchId", " ", "lines", List.of(line)), "/batchId", "MISSING");
            whole(Map.of("batchId", "b".repeat(201), "lines", List.of(line)), "/batchId", "INVALID_TEXT");
            whole(Map.of("batchId", "b", "lines", line), "/lines", "WRONG_TYPE");
            whole(Map.of("batchId", "b", "lines", Collections.nCopies(10_001, Map.of())), "/lines", "TOO_MANY");
            whole(Map.of("batchId", "b", "lines", List.of(line), "depot", "x"), "/depot", "UNKNOWN_FIELD");
            var keyed = api.as(Role.YARD);
            keyed.post("/api/scan-batches", batch(List.of(line))).expectProblem(400, "IDEMPOTENCY_KEY_REQUIRED");
            keyed.with("Idempotency-Key", "k".repeat(201)).post("/api/scan-batches", batch(List.of(line)))
                    .expectProblem(400, "INVALID_INPUT");
            keyed.with("Idempotency-Key", "k").post("/api/scan-batches", "{\"batchId\":\"b\",\"lines\":[{")
                    .expectProblem(400, "INVALID_INPUT");
            keyed.with("Idempotency-Key", "k").post("/api/scan-batches",
                    "{\"batchId\":\"b\",\"lines\":[{\"id\":\"1\",\"id\":\"2\"}]}").expectProblem(400, "INVALID_INPUT");
        });
    }

    private void whole(Map<String, ?> body, String... errors) {
        var expected = new TreeMap<String, String>();
        for (int i = 0; i < errors.length; i += 2) {
            expected.put(errors[i], errors[i + 1]);
        }
        assertThat(scans.send(Role.YARD, body).expectProblem(400, "INVALID_INPUT").errors()).isEqualTo(expected);
    }

    /** As by a rule of the database that the code does not know. */
    @Test
    void whatTheDatabaseRefusesStopsNoOther() {
        owner.sql("alter table emptying add constraint no_riddle check (how <> 'riddle') not valid").update();
        try {
            refused(line("RETURN", container, "2026-11-20T10:00:00Z", "toSite", depot, "empty", true, "how", "riddle"),
                    "",
                    "CONSTRAINT");
        } finally {
            owner.sql("alter table emptying drop constraint no_riddle").update();
        }
        assertThat(jdbc.sql("select count(*) from movement where container_id = ?").param(container).query(Long.class)
                .single()).as("where it stood, and the two lines around").isEqualTo(3);
    }

    @Test
    void tenThousandLinesAreNotTooMany() {
        var lines = new ArrayList<@Nullable Object>(Collections.nCopies(9_999, 1));
        lines.add(fill(container, "2026-11-20T10:00:00Z"));
        var answer = scans.send(Role.YARD, batch(lines)).expect(201);
        assertThat(answer.at("/counts/refused").asInt()).isEqualTo(9_999);
        assertThat(answer.text("/lines/9999/outcome")).isEqualTo("RECORDED");
        assertThat(answer.at("/lines")).hasSize(10_000);
    }
}
