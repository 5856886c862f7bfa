package org.collarbook.holds;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
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

/** Requests that race for the holds of one container, and registrations that race with a recall: none is lost. */
@RegisterTest
class HoldRaceTests {

    private static final Map<String, Object> OFFICE = Map.of("by", "CLERK", "note", "found");

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;
    private final RecallSweep sweep;

    HoldRaceTests(Api api, Given given, JdbcClient jdbc, RecallSweep sweep) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
        this.sweep = sweep;
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

    private String standing(UUID container) {
        return jdbc.sql("select standing from requirement where container_id = ? and decisive").param(container)
                .query(String.class).single();
    }

    @RepeatedTest(3)
    void placingLiftingMovingAndFillChecksLoseNoHold() throws Exception {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        var clerk = api.as(Role.CLERK);
        var old = clerk.post("/api/containers/" + id + "/holds", Map.of("reason", "LOST")).expect(201).text("/hold/id");

        // so that no fill check comes between the lift and the first of the others
        clerk.post("/api/containers/" + id + "/holds", Map.of("reason", "LEAKING")).expect(201);
        var site = given.site(null);

        var requests = new ArrayList<Callable<Answer>>();
        for (int i = 0; i < 10; i++) {
            var moved = Map.of("containerId", id, "toSite", site, "occurredAt", "2026-11-21T09:0" + i + ":00Z");
            requests.add(() -> clerk.post("/api/containers/" + id + "/holds", Map.of("reason", "DENTED")));
            requests.add(() -> clerk.post("/api/holds/" + old + "/lifts", OFFICE));
            requests.add(() -> api.as(Role.FILLER)
                    .get("/api/fill-check?specificGravity=0.508&serial=" + body.get("serial")));
            requests.add(() -> clerk.post("/api/movements", moved));
        }
        var answers = race(requests);
        for (int i = 0; i < answers.size(); i += 4) {
            answers.get(i).expect(201);
            assertThat(answers.get(i + 2).expect(200).at("/mayFill").asBoolean()).isFalse();
            answers.get(i + 3).expect(201);
        }
        var lifts = answers.stream().filter(answer -> answer.body().contains(old) && answer.status() == 201).toList();
        assertThat(lifts).as("one of them lifted it").hasSize(1);
        assertThat(answers.stream().filter(answer -> answer.status() == 409))
                .hasSize(9).allSatisfy(answer -> answer.expectProblem(409, "ALREADY_LIFTED"));
        assertThat(clerk.get("/api/containers/" + id + "/holds?standing=true").at("/items")).hasSize(11);
        assertThat(standing(id)).isEqualTo("ON_HOLD");
    }

    /** The last of two holds that are lifted at the same time leaves the container in date, not on hold. */
    @RepeatedTest(3)
    void liftsThatRaceLeaveNoHoldBehind() throws Exception {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        var clerk = api.as(Role.CLERK);
        var requests = new ArrayList<Callable<Answer>>();
        for (int i = 0; i < 8; i++) {
            var hold = clerk.post("/api/containers/" + id + "/holds", Map.of("reason", "LOST")).expect(201)
                    .text("/hold/id");
            requests.add(() -> clerk.post("/api/holds/" + hold + "/lifts", OFFICE));
        }
        assertThat(race(requests)).allSatisfy(answer -> answer.expect(201));
        assertThat(standing(id)).isEqualTo("DUE");
    }

    @RepeatedTest(3)
    void noRegistrationSlipsPastARecall() throws Exception {
        var maker = "Q" + Given.serial();
        var clerk = api.as(Role.CLERK);
        var requests = new ArrayList<Callable<Answer>>();
        for (int i = 0; i < 24; i++) {
            var body = Given.cylinder();
            body.put("maker", maker);
            requests.add(i == 8
                    ? () -> clerk.post("/api/recalls", Map.of("maker", maker, "issuedBy", "the maker"))
                    : () -> clerk.post("/api/containers", body));
        }
        race(requests).forEach(answer -> answer.expect(201));
        // what was under way when the first sweep ended is found by the next
        sweep.run();
        assertThat(jdbc.sql("""
                select count(*) from container c join requirement r on r.container_id = c.id
                where c.maker = ? and r.decisive and r.standing = 'ON_HOLD'""").param(maker).query(Long.class).single())
                .isEqualTo(23);
    }
}
