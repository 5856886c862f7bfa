package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.RepeatedTest;

/** What is recorded while a record is being merged either counts for the one that is kept or is refused. */
@RegisterTest
class MergeRaceTests {

    private final Api.Session clerk;

    MergeRaceTests(Api api) {
        this.clerk = api.as(Role.CLERK);
    }

    @RepeatedTest(5)
    void noHoldIsLostBetween() throws Exception {
        var kept = clerk.post("/api/containers", Given.cylinder()).expect(201);
        var other = clerk.post("/api/containers", Given.cylinder()).expect(201);
        var path = "/api/containers/" + kept.id();
        var requests = new ArrayList<Callable<Answer>>();
        for (int i = 0; i < 6; i++) {
            requests.add(() -> clerk.post("/api/containers/" + other.id() + "/holds", Map.of("reason", "DENTED")));
        }
        requests.add(3, () -> clerk.ifMatch(kept).post(path + "/merges", Map.of("absorbed", other.id(), "setAside",
                List.of("serial"), "fillWillBeAllowed", true, "reason", "one cylinder")));
        List<Answer> answers = new ArrayList<>();
        try (var threads = Executors.newFixedThreadPool(requests.size())) {
            for (var done : threads.invokeAll(requests)) {
                answers.add(done.get());
            }
        }
        answers.remove(3).expect(201);
        long placed = answers.stream().filter(answer -> answer.status() == 201).count();
        answers.stream().filter(answer -> answer.status() != 201).forEach(late -> late.expectProblem(409, "MERGED"));
        assertThat(clerk.get(path + "/holds?standing=true").at("/items")).hasSize((int) placed);
        assertThat(clerk.get("/api/audit/verification?container=" + other.id()).at("/broken")).isEmpty();
    }

    @RepeatedTest(3)
    void twoMergesTheOtherWayRoundDoNotBothHappen() throws Exception {
        var one = clerk.post("/api/containers", Given.cylinder()).expect(201);
        var two = clerk.post("/api/containers", Given.cylinder()).expect(201);
        List<Callable<Answer>> requests = List.of(() -> merge(one, two), () -> merge(two, one));
        var statuses = new ArrayList<Integer>();
        try (var threads = Executors.newFixedThreadPool(2)) {
            for (var done : threads.invokeAll(requests)) {
                statuses.add(done.get().status());
            }
        }
        assertThat(statuses).containsExactlyInAnyOrder(201, 409);
    }

    private Answer merge(Answer kept, Answer other) {
        return clerk.ifMatch(kept).post("/api/containers/" + kept.id() + "/merges", Map.of("absorbed", other.id(),
                "setAside", List.of("serial"), "reason", "one cylinder"));
    }
}
