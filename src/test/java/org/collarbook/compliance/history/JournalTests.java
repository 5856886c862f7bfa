package org.collarbook.compliance.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;

import org.collarbook.access.Role;
import org.collarbook.platform.Cursor;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What was recorded can be read back in order, and an alteration behind the application's back is found and named. */
@RegisterTest
class JournalTests {

    private final Api api;
    private final Given given;
    /** The owner of the tables, who can do what the application's login cannot. */
    private final JdbcClient owner;

    JournalTests(Api api, Given given, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
    }

    private UUID withALife() {
        var body = Given.cylinder();
        var container = given.registered(body);
        given.moved(container, given.site(null), "2026-11-20T09:00:00Z");
        var read = api.as(Role.CLERK).get("/api/containers/" + container);
        body.put("maker", "QY");
        body.put("reason", "misread");
        api.as(Role.CLERK).ifMatch(read).put("/api/containers/" + container, body).expect(200);
        given.moved(container, given.site(null), "2026-11-18T09:00:00Z");
        return container;
    }

    private Answer verified(UUID container) {
        return api.as(Role.CLERK).get("/api/audit/verification?container=" + container).expect(200);
    }

    private List<String> broken(UUID container) {
        var broken = new ArrayList<String>();
        verified(container).at("/broken").forEach(one -> broken.add(one.path("kind").asString() + ": "
                + one.path("what").asString()));
        return broken;
    }

    @Test
    void aLifeIsToldInTheOrderInWhichItHappened() {
        var container = withALife();
        var kinds = new ArrayList<String>();
        var cursor = "";
        do {
            var page = api.as(Role.FILLER).get("/api/containers/" + container + "/history?size=1&cursor=" + cursor)
                    .expect(200);
            page.at("/items").forEach(entry -> kinds.add(entry.path("kind").asString()));
            cursor = page.json().path("next").asString("");
        } while (!cursor.isEmpty());
        assertThat(kinds).containsExactlyInAnyOrder("RECORDED_ANEW", "CORRECTED", "REGISTERED", "MOVED", "MOVED");
        var first = api.as(Role.FILLER).get("/api/containers/" + container + "/history").expect(200);
        assertThat(first.body()).contains("\"was\":\"QX\"", "\"became\":\"QY\"", "\"reason\":\"misread\"",
                "\"maker\":\"QX\"", "\"maker\":\"QY\"");
        assertThat(verified(container).at("/whole").asBoolean()).isTrue();
        assertThat(verified(container).at("/entries").asInt()).isEqualTo(5);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "update movement set occurred_at = occurred_at - interval '1 day' where container_id = ? | MOVED: the fact was altered",
            "update container set tare_lb = 18 where id = ? | RECORDED_ANEW: the fact was altered",
            "update mark_correction set reason = 'another' where container_id = ? | CORRECTED: the fact was altered",
            "delete from mark_correction where container_id = ? | CORRECTED: the fact is gone",
            "delete from journal where seq = 2 and container_id = ? | entry 2 is missing",
            "delete from journal where seq = 5 and container_id = ? | CHAIN: the end of the chain",
            "update journal set content = '{}' where seq = 1 and container_id = ? | REGISTERED: the entry was altered",
            "insert into fill (id, container_id, filled_on, recorded_by) select gen_random_uuid(), id, '2026-11-01', id from container where id = ? | FILLED: this fact is not in the chain"})
    void anAlterationIsFoundAndNamed(String sql, String found) {
        var container = withALife();
        assertThat(broken(container)).isEmpty();
        assertThat(owner.sql(sql).param(container).update()).isPositive();
        assertThat(broken(container)).as(sql).isNotEmpty().anySatisfy(one -> assertThat(one).contains(found));
    }

    /** A fact altered together with its own entry breaks the entries after it. */
    @Test
    void aForgedEntryBreaksTheChainBehindIt() {
        var container = withALife();
        owner.sql("update journal set hash = sha256(hash) where seq = 2 and container_id = ?").param(container)
                .update();
        assertThat(broken(container)).anySatisfy(one -> assertThat(one).contains("its hash is another"))
                .anySatisfy(one -> assertThat(one).contains("does not follow"));
    }

    @Test
    void racingRecordsMakeOneChain() throws Exception {
        var container = given.registered();
        var sites = List.of(given.site(null), given.site(null));
        try (var threads = Executors.newFixedThreadPool(8)) {
            var moves = IntStream.range(0, 80).mapToObj(i -> threads.submit(() -> api.as(Role.YARD)
                    .post("/api/movements", Map.of("containerId", container, "toSite", sites.get(i % 2), "occurredAt",
                            "2026-11-%02dT09:00:00Z".formatted(1 + i % 20)))))
                    .toList();
            for (var move : moves) {
                move.get();
            }
        }
        var answer = verified(container);
        assertThat(answer.at("/whole").asBoolean()).as(answer.body()).isTrue();
        assertThat(answer.at("/entries").asInt()).isEqualTo(81);
    }

    @Test
    void theChainsAreWalkedByPages() {
        var one = withALife();
        var other = withALife();
        var walked = 0;
        assertThat(api.as(Role.ADMINISTRATOR).get("/api/audit/verification?size=1").expect(200).text("/next"))
                .isNotEmpty();
        // from these two on: other tests leave tens of thousands before them
        var cursor = Cursor.after(new UUID(one.getMostSignificantBits(), one.getLeastSignificantBits() - 1))
                .toString();
        do {
            var page = api.as(Role.ADMINISTRATOR).get("/api/audit/verification?size=1&cursor=" + cursor).expect(200);
            walked += page.at("/containers").asInt();
            cursor = page.json().path("next").asString("");
        } while (!cursor.isEmpty());
        assertThat(walked).isGreaterThanOrEqualTo(2);
        assertThat(broken(one)).isEmpty();
        assertThat(broken(other)).isEmpty();
        api.as(Role.FILLER).get("/api/audit/verification").expect(403);
        api.as(Role.CLERK).get("/api/containers/" + UUID.randomUUID() + "/history").expect(404);
        api.as(Role.CLERK).get("/api/containers/" + one + "/history?cursor=x").expectProblem(400, "INVALID_INPUT");
    }
}
