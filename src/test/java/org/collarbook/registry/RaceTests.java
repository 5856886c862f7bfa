package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.RepeatedTest;

/** Requests that race for the same marks, tag or version: one wins, the others are told who did. */
@RegisterTest
class RaceTests {

    private final Api.Session clerk;

    RaceTests(Api api) {
        this.clerk = api.as(Role.CLERK);
    }

    private static ArrayList<Answer> race(Callable<Answer> request) throws Exception {
        try (var threads = Executors.newFixedThreadPool(8)) {
            var answers = new ArrayList<Answer>();
            for (var future : threads.invokeAll(IntStream.range(0, 8).mapToObj(i -> request).toList())) {
                answers.add(future.get());
            }
            return answers;
        }
    }

    private static void oneWon(ArrayList<Answer> answers, int won, int lost, String code) {
        assertThat(answers).filteredOn(answer -> answer.status() == won).hasSize(1);
        answers.stream().filter(answer -> answer.status() != won).forEach(answer -> answer.expectProblem(lost, code));
    }

    @RepeatedTest(5)
    void oneOfManyRegistersTheMarks() throws Exception {
        var body = Given.cylinder();
        var answers = race(() -> clerk.post("/api/containers", body));
        oneWon(answers, 201, 409, "NATURAL_KEY_TAKEN");
        var id = answers.stream().filter(answer -> answer.status() == 201).findFirst().orElseThrow().id();
        assertThat(answers).filteredOn(answer -> answer.status() == 409)
                .allSatisfy(answer -> assertThat(answer.text("/container/id")).isEqualTo(id));
    }

    @RepeatedTest(5)
    void oneOfManyGetsTheTag() throws Exception {
        var tag = Given.serial();
        oneWon(race(() -> {
            var body = Given.cylinder();
            body.put("tag", tag);
            return clerk.post("/api/containers", body);
        }), 201, 409, "TAG_IN_USE");
    }

    @RepeatedTest(5)
    void oneOfManyCorrectsAVersion() throws Exception {
        var body = Given.cylinder();
        var created = clerk.post("/api/containers", body).expect(201);
        Map<String, @Nullable Object> correction = new LinkedHashMap<>(body);
        correction.put("tare", "18 lb");
        correction.put("reason", "weighed");
        oneWon(race(() -> clerk.ifMatch(created).put("/api/containers/" + created.id(), correction)), 200, 412,
                "STALE_VERSION");
    }
}
