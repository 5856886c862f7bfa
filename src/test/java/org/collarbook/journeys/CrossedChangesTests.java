package org.collarbook.journeys;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Stream;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;

/** A site is changed, and with it all that stands there, while tags of the same containers change: each waits for the other. */
@RegisterTest
class CrossedChangesTests {

    private static final int ROUNDS = 25;

    private final Api api;
    private final Given given;

    CrossedChangesTests(Api api, Given given) {
        this.api = api;
        this.given = given;
    }

    @Test
    void aSiteAndTheTagsOfWhatStandsThere() {
        var customer = given.customer();
        var site = given.site(customer);
        var containers = new ArrayList<UUID>();
        for (int i = 0; i < 12; i++) {
            var id = given.registered();
            given.moved(id, site, "2026-11-20T09:00:00Z");
            containers.add(id);
        }
        var answers = new ConcurrentLinkedQueue<Answer>();
        // the common pool of a small machine would do one after the other
        var threads = Stream.<Runnable>of(() -> renamed(site, customer, answers), () -> tagged(containers, answers),
                () -> tagged(containers.reversed(), answers))
                .map(changes -> CompletableFuture.runAsync(changes, Thread::startVirtualThread)).toList();
        threads.forEach(CompletableFuture::join);
        assertThat(answers).hasSize(3 * ROUNDS)
                .allSatisfy(answer -> assertThat(answer.status()).as(answer.toString()).isIn(200, 201, 412));
        assertThat(answers).filteredOn(answer -> answer.status() < 300).hasSizeGreaterThan(ROUNDS);
    }

    private void renamed(UUID site, UUID customer, ConcurrentLinkedQueue<Answer> answers) {
        var clerk = api.as(Role.CLERK);
        for (int i = 0; i < ROUNDS; i++) {
            var read = clerk.get("/api/sites/" + site).expect(200);
            var body = Given.depot();
            body.put("code", read.text("/code"));
            body.put("name", "Dock " + i);
            body.put("kind", "CUSTOMER");
            body.put("customerId", customer);
            body.put("zone", i % 2 == 0 ? "America/Denver" : "America/Chicago");
            answers.add(clerk.ifMatch(read).put("/api/sites/" + site, body));
        }
    }

    private void tagged(List<UUID> containers, ConcurrentLinkedQueue<Answer> answers) {
        var clerk = api.as(Role.CLERK);
        for (int i = 0; i < ROUNDS; i++) {
            var path = "/api/containers/" + containers.get(i % containers.size());
            answers.add(clerk.ifMatch(clerk.get(path)).post(path + "/tags",
                    Map.of("tag", "X" + Given.serial(), "reason", "a new label")));
        }
    }
}
