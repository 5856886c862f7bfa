package org.collarbook.intake.scans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.intake.scans.Scans.batch;
import static org.collarbook.intake.scans.Scans.fill;
import static org.collarbook.intake.scans.Scans.line;
import static org.collarbook.intake.scans.Scans.outcomes;
import static org.collarbook.intake.scans.Scans.texts;

import java.util.ArrayList;
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
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A batch of every kind; repeats; what is kept of it. */
@RegisterTest
class ScanBatchesTests {

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final JdbcClient jdbc;
    private final Scans scans;

    ScanBatchesTests(Api api, Given given, Tables tables, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.jdbc = jdbc;
        this.scans = new Scans(api);
    }

    private UUID inDate(@Nullable String tag) {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        body.put("tag", tag);
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-01T09:00:00Z");
        return id;
    }

    private Answer read(String path) {
        return api.as(Role.CLERK).get(path).expect(200);
    }

    private String heads() {
        return jdbc.sql("select md5(string_agg(container_id || ' ' || seq || encode(hash, 'hex'), ',' order by"
                + " container_id)) from journal_head").query(String.class).single();
    }

    private void unchangedBy(Runnable refused) {
        var before = heads();
        tables.unchangedBy(refused);
        assertThat(heads()).isEqualTo(before);
    }

    @Test
    void everyKindIsRecordedAsByItsOwnEndpoint() {
        var tag = "CB-" + Given.serial();
        var id = inDate(tag);
        var farm = given.site(given.customer());
        var depot = given.site(null);
        var tagged = fill(null, "2026-11-22T09:00:00Z", "tag", tag);
        var serial = read("/api/containers/" + id).text("/serial");
        var answer = scans.send(line("HOLD", null, "2026-11-25T10:00:00Z", "serial", serial, "specification",
                "DOT-4BA240", "maker", "QX", "reason", "DENTED", "note", "fell off the truck"),
                line("RETURN", id, "2026-11-25T09:00:00Z", "toSite", depot, "empty", true, "how", "used up"),
                line("MOVEMENT", id, "2026-11-23T09:00:00Z", "toSite", farm), tagged).expect(201);
        assertThat(outcomes(answer)).as(answer.body()).containsOnly("RECORDED").hasSize(4);
        assertThat(answer.at("/counts/recorded").asInt()).isEqualTo(4);
        assertThat(answer.at("/counts/lines").asInt()).isEqualTo(4);
        assertThat(texts(answer, "/lines", "containerId")).containsOnly(id.toString());
        assertThat(answer.at("/lines/1/moved").asBoolean()).isTrue();
        assertThat(answer.text("/lines/1/emptyingId")).isNotEmpty();
        assertThat(texts(read("/api/containers/" + id + "/movements"), "/items", "toSite").subList(0, 2))
                .containsExactly(depot.toString(), farm.toString());
        var fills = read("/api/containers/" + id + "/fills");
        assertThat(fills.text("/items/0/id")).isEqualTo(answer.text("/lines/3/fillId"));
        assertThat(fills.at("/items/0/toldAfterwards").asBoolean()).isTrue();
        assertThat(fills.at("/items/0/refusedFor")).isEmpty();
        var holds = read("/api/containers/" + id + "/holds");
        assertThat(holds.text("/items/0/id")).isEqualTo(answer.text("/lines/0/holdId"));
        assertThat(holds.text("/items/0/note")).isEqualTo("fell off the truck");
        assertThat(read("/api/containers/" + id + "/assessment").text("/status")).isEqualTo("ON_HOLD");
        assertThat(jdbc.sql("select standing from requirement where container_id = ?").param(id).query(String.class)
                .list()).as("the stored clock followed").contains("ON_HOLD");
        assertThat(read("/api/audit/verification?container=" + id).at("/whole").asBoolean()).isTrue();
        assertThat(jdbc.sql("select string_agg(kind, ' ' order by seq) from journal where container_id = ? and kind in"
                + " ('FILLED', 'MOVED')").param(id).query(String.class).single())
                .as("entered as they happened").isEqualTo("MOVED FILLED MOVED MOVED");
    }

    @Test
    void aBatchSentAgainChangesNothingInWholeOrInPart() {
        var id = inDate(null);
        var depot = given.site(null);
        var lines = new ArrayList<Map<String, @Nullable Object>>(List.of(
                line("MOVEMENT", id, "2026-11-22T09:00:00Z", "toSite", depot), fill(id, "2026-11-23T09:00:00Z"),
                line("HOLD", id, "2026-11-24T09:00:00Z", "reason", "LEAKING"),
                fill(id, "2026-11-25T09:00:00Z"), line("RETURN", id, "2026-11-25T10:00:00Z", "toSite", depot),
                fill(UUID.randomUUID(), "2026-11-25T09:00:00Z")));
        var whole = batch(lines);
        var once = api.as(Role.YARD).with("Idempotency-Key", Given.serial());
        var first = once.post("/api/scan-batches", whole).expect(201);
        assertThat(outcomes(first)).containsExactly("RECORDED", "RECORDED", "RECORDED", "RECORDED_NOT_ALLOWED",
                "RECORDED", "REFUSED");
        unchangedBy(() -> {
            var second = once.post("/api/scan-batches", whole).expect(200);
            assertThat(outcomes(second)).containsExactly("REPEATED", "REPEATED", "REPEATED", "REPEATED", "REPEATED",
                    "REFUSED");
            assertThat(texts(second, "/lines", "first")).containsExactly("RECORDED", "RECORDED", "RECORDED",
                    "RECORDED_NOT_ALLOWED", "RECORDED", "");
            for (var fact : List.of("fillId", "movementId", "holdId", "containerId")) {
                assertThat(texts(second, "/lines", fact)).isEqualTo(texts(first, "/lines", fact));
            }
            assertThat(second.at("/lines/3/reasons")).isEqualTo(first.at("/lines/3/reasons"));
            once.post("/api/scan-batches", batch(lines)).expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
        });
        // parts under the same name, each with a key of its own
        var counts = tables.counts();
        var heads = heads();
        for (int from = 0; from < 5; from += 2) {
            whole.put("lines", lines.subList(from, Math.min(from + 2, 5)));
            var part = scans.send(Role.YARD, whole).expect(200);
            assertThat(outcomes(part)).containsOnly("REPEATED");
            assertThat(part.header("Idempotent-Replay")).isEqualTo("true");
        }
        var now = new TreeMap<>(tables.counts());
        now.merge("idempotency", -3L, Long::sum);
        assertThat(now).isEqualTo(counts);
        assertThat(heads()).isEqualTo(heads);
    }

    @Test
    void anIdThatHasRecordedSomethingIsNoOtherLines() {
        var id = inDate(null);
        var line = fill(id, "2026-11-23T09:00:00Z");
        scans.send(line).expect(201);
        line.put("netAfterLb", 18);
        var other = scans.send(line, fill(id, "2026-11-24T09:00:00Z")).expect(201);
        assertThat(outcomes(other)).containsExactly("REFUSED", "RECORDED");
        assertThat(other.text("/lines/0/code")).isEqualTo("ID_REUSED");
        assertThat(other.text("/lines/0/pointer")).isEqualTo("/lines/0/id");
        // the same twice in one batch, and another one under its id
        var twice = fill(id, "2026-11-25T09:00:00Z");
        var changed = new TreeMap<>(twice);
        changed.put("netAfterLb", 17);
        var answer = scans.send(twice, twice, changed).expect(201);
        assertThat(outcomes(answer)).containsExactly("RECORDED", "REPEATED", "REFUSED");
        assertThat(answer.text("/lines/2/code")).isEqualTo("ID_REUSED");
        assertThat(answer.text("/lines/1/fillId")).isEqualTo(answer.text("/lines/0/fillId"));
        assertThat(count("fill", id)).isEqualTo(3);
    }

    private long count(String table, UUID container) {
        return jdbc.sql("select count(*) from " + table + " where container_id = ?").param(container).query(Long.class)
                .single();
    }

    @Test
    void anotherSendersIdsAreItsOwn() {
        var id = inDate(null);
        var line = line("MOVEMENT", id, "2026-11-23T09:00:00Z", "toSite", given.site(null));
        assertThat(outcomes(scans.send(Role.YARD, batch(List.of(line))).expect(201))).containsExactly("RECORDED");
        line.put("occurredAt", "2026-11-24T09:00:00Z");
        assertThat(outcomes(scans.send(Role.CLERK, batch(List.of(line))).expect(201))).containsExactly("RECORDED");
    }

    @Test
    void aRefusedLineMayBeSentAgainUnderItsIdAsItWasOrMended() {
        var tag = "CB-" + Given.serial();
        var line = fill(null, "2026-11-23T09:00:00Z", "tag", tag);
        var refused = scans.send(line).expect(201);
        assertThat(refused.text("/lines/0/code")).isEqualTo("UNKNOWN_CONTAINER");
        assertThat(refused.text("/lines/0/pointer")).isEqualTo("/lines/0/tag");
        assertThat(refused.text("/lines/0/found")).isEqualTo(tag);
        var id = inDate(tag);
        assertThat(outcomes(scans.send(line).expect(201))).containsExactly("RECORDED");
        var mended = fill(id, "2026-11-24T09:00:00Z", "netAfterLb", -1);
        assertThat(outcomes(scans.send(mended).expect(201))).containsExactly("REFUSED");
        mended.put("netAfterLb", 15);
        assertThat(outcomes(scans.send(mended).expect(201))).containsExactly("RECORDED");
        assertThat(count("fill", id)).isEqualTo(2);
    }

    @Test
    void whatBecameOfABatchIsTold() {
        var id = inDate(null);
        var lines = new ArrayList<Map<String, @Nullable Object>>();
        for (int i = 0; i < 7; i++) {
            lines.add(fill(i == 3 ? UUID.randomUUID() : id, "2026-11-25T0%d:00:00Z".formatted(9 - i)));
        }
        var batch = batch(lines);
        var sent = scans.send(Role.YARD, batch).expect(201);
        for (var path : List.of(sent.header("Location"), "/api/scan-batches/" + batch.get("batchId"))) {
            var told = new ArrayList<String>();
            var cursor = "";
            do {
                var page = api.as(Role.YARD).get(path + "?size=3&cursor=" + cursor).expect(200);
                assertThat(page.at("/counts/recorded").asInt()).isEqualTo(6);
                assertThat(page.at("/counts/refused").asInt()).isEqualTo(1);
                assertThat(page.text("/batchId")).isEqualTo(batch.get("batchId"));
                told.addAll(texts(page, "/items", "id"));
                cursor = page.json().path("next").asString("");
            } while (!cursor.isEmpty());
            assertThat(told).isEqualTo(lines.stream().map(line -> line.get("id")).toList());
        }
        var names = api.as(Role.CLERK);
        names.get("/api/scan-batches/" + batch.get("batchId")).expectProblem(404, "NOT_FOUND");
        names.get(sent.header("Location")).expect(200);
        names.get("/api/scan-batches/" + UUID.randomUUID()).expectProblem(404, "NOT_FOUND");
        names.get(sent.header("Location") + "?cursor=x").expectProblem(400, "INVALID_INPUT");
    }

    @Test
    void anEarlierMovementToldLateIsHistoryAlone() {
        var id = inDate(null);
        var farm = given.site(given.customer());
        var shop = given.site(null);
        given.moved(id, farm, "2026-11-24T09:00:00Z");
        var answer = scans.send(line("MOVEMENT", id, "2026-11-20T09:00:00Z", "toSite", shop)).expect(201);
        assertThat(answer.at("/lines/0/moved").asBoolean(true)).isFalse();
        assertThat(jdbc.sql("select site_id from placement where container_id = ?").param(id).query(UUID.class)
                .single()).isEqualTo(farm);
        // the fill of that day was made where it stood then
        var fill = scans.send(fill(id, "2026-11-21T09:00:00Z")).expect(201);
        assertThat(outcomes(fill)).containsExactly("RECORDED");
        assertThat(jdbc.sql("select site_id from fill where container_id = ?").param(id).query(UUID.class).single())
                .isEqualTo(shop);
    }
}
