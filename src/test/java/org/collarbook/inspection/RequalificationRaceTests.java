package org.collarbook.inspection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.inspection.RequalificationRecordTests.path;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.RepeatedTest;

/** Records of one container that race. */
@RegisterTest
class RequalificationRaceTests {

    private final Api api;
    private final Api.Session yard;
    private final Given given;

    RequalificationRaceTests(Api api, Given given) {
        this.api = api;
        this.yard = api.as(Role.YARD);
        this.given = given;
    }

    private static List<Answer> race(List<? extends Callable<Answer>> requests) throws Exception {
        try (var threads = Executors.newFixedThreadPool(8)) {
            var answers = new ArrayList<Answer>();
            for (var future : threads.invokeAll(requests)) {
                answers.add(future.get());
            }
            return answers;
        }
    }

    private static List<Callable<Answer>> times(int count, Callable<Answer> request) {
        return IntStream.range(0, count).mapToObj(i -> request).toList();
    }

    private static void oneWon(List<Answer> answers, String code) {
        assertThat(answers).filteredOn(answer -> answer.status() == 201).hasSize(1);
        answers.stream().filter(answer -> answer.status() != 201).forEach(answer -> answer.expectProblem(409, code));
    }

    /** When it was recorded: the first 48 bits of an id, RFC 9562, version 7. */
    private static long millisecond(String id) {
        return UUID.fromString(id).getMostSignificantBits() >>> 16;
    }

    @RepeatedTest(5)
    void theSameRecordIsStoredOnce() throws Exception {
        var id = given.registered();
        var sheet = Sheets.visual(Sheets.approved(api));
        oneWon(race(times(8, () -> yard.post(path(id), sheet))), "ALREADY_RECORDED");
        assertThat(yard.get(path(id)).at("/items")).hasSize(1);
    }

    @RepeatedTest(5)
    void nothingPassesACondemnation() throws Exception {
        var id = given.registered();
        var rin = Sheets.approved(api);
        var requests = new ArrayList<Callable<Answer>>(times(1, () -> yard.post(path(id), Sheets.condemned(rin))));
        requests.addAll(times(3, () -> yard.post(path(id), Sheets.visual(rin))));
        requests.addAll(times(3, () -> yard.post(path(id), Sheets.proof(rin))));
        var answers = race(requests);
        assertThat(answers.getFirst().status()).isEqualTo(201);
        answers.stream().filter(answer -> answer.status() != 201)
                .forEach(answer -> assertThat(answer.expect(409).text("/code"))
                        .isIn("CONDEMNED", "ALREADY_RECORDED"));
        var stored = yard.get(path(id)).at("/items");
        assertThat(stored).hasSize((int) answers.stream().filter(answer -> answer.status() == 201).count());
        var condemned = millisecond(answers.getFirst().id());
        stored.forEach(one -> assertThat(millisecond(one.at("/id").asString())).isLessThanOrEqualTo(condemned));
        yard.post(path(id), Sheets.volumetric(rin)).expectProblem(409, "CONDEMNED");
    }

    @RepeatedTest(5)
    void aRecordIsCorrectedOnce() throws Exception {
        var id = given.registered();
        var rin = Sheets.approved(api);
        var record = yard.post(path(id), Sheets.visual(rin)).expect(201);
        var corrections = "/api/requalifications/" + record.id() + "/corrections";
        var requests = new ArrayList<Callable<Answer>>(
                times(4, () -> yard.post(corrections, Sheets.correction("void", null))));
        requests.addAll(times(4, () -> yard.post(corrections, Sheets.correction("proof", Sheets.proof(rin)))));
        oneWon(race(requests), "ALREADY_CORRECTED");
    }
}
