package org.collarbook.compliance.swaps;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.RepeatedTest;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Drivers who tell at once that they took the same container away, by swaps and by batches: one did. */
@RegisterTest
class SwapRaceTests {

    private static final String AT = "2026-11-25T10:00:00Z";

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;

    SwapRaceTests(Api api, Given given, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
    }

    private UUID fresh(UUID site) {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        var id = given.registered(body);
        given.moved(id, site, "2026-11-25T07:00:00Z");
        return id;
    }

    private UUID truck() {
        var body = Given.depot();
        body.put("kind", "VEHICLE");
        return UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
    }

    private static Map<String, Object> swap(UUID farm, UUID truck, UUID out, UUID in) {
        return Map.of("site", farm, "vehicle", truck, "out", Map.of("containerId", out), "in",
                Map.of("containerId", in), "occurredAt", AT);
    }

    private static List<Answer> race(List<Callable<Answer>> requests) throws Exception {
        try (var threads = Executors.newFixedThreadPool(12)) {
            var answers = new ArrayList<Answer>();
            for (var future : threads.invokeAll(requests)) {
                answers.add(future.get());
            }
            return answers;
        }
    }

    @RepeatedTest(3)
    void oneWinsAndTheOthersAreDisputed() throws Exception {
        var farm = given.site(given.customer());
        var outs = List.of(fresh(farm), fresh(farm));
        var requests = new ArrayList<Callable<Answer>>();
        for (int i = 0; i < 12; i++) {
            var truck = truck();
            var in = fresh(truck);
            var body = swap(farm, truck, outs.get(i % 2), in);
            requests.add(() -> api.as(Role.DISPATCHER).post("/api/swaps", body));
        }
        var answers = race(requests);
        assertThat(answers.stream().filter(answer -> answer.status() == 201)).hasSize(2);
        answers.stream().filter(answer -> answer.status() != 201)
                .forEach(refused -> refused.expectProblem(409, "PLACE_DISPUTED"));
        for (var out : outs) {
            assertThat(jdbc.sql("select count(*) from movement where container_id = ?").param(out)
                    .query(Long.class).single()).isEqualTo(2);
        }
    }

    /** Each names the same two the other way round, alone and in batches. */
    @RepeatedTest(3)
    void crossedOnesDoNotStopOneAnother() throws Exception {
        var truck = truck();
        var farm = given.site(given.customer());
        var one = fresh(farm);
        var other = fresh(truck);
        var requests = new ArrayList<Callable<Answer>>();
        for (int i = 0; i < 24; i++) {
            var body = i % 2 == 0 ? swap(farm, truck, one, other) : swap(farm, truck, other, one);
            if (i % 3 == 0) {
                var line = new java.util.LinkedHashMap<>(body);
                line.put("id", Given.serial());
                line.put("kind", "SWAP");
                requests.add(() -> api.as(Role.YARD).with("Idempotency-Key", Given.serial()).post("/api/scan-batches",
                        Map.of("batchId", "B" + Given.serial(), "lines", List.of(line))));
            } else {
                requests.add(() -> api.as(Role.DISPATCHER).post("/api/swaps", body));
            }
        }
        Collections.shuffle(requests);
        var answers = race(requests);
        var recorded = new HashSet<String>();
        for (var answer : answers) {
            assertThat(answer.status()).as(answer.body()).isIn(201, 409);
            if (answer.status() == 201) {
                recorded.add(answer.at("/lines").isMissingNode() ? answer.id() : answer.text("/lines/0/swap/id"));
            } else {
                answer.expectProblem(409, "PLACE_DISPUTED");
            }
        }
        recorded.remove("");
        assertThat(jdbc.sql("select count(*) from swap where site_id = ?").param(farm).query(Long.class).single())
                .isEqualTo(recorded.size()).isPositive();
        for (var id : List.of(one, other)) {
            assertThat(api.as(Role.CLERK).get("/api/audit/verification?container=" + id).at("/whole").asBoolean())
                    .isTrue();
        }
    }
}
