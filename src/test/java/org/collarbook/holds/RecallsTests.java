package org.collarbook.holds;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.platform.Ids;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

import tools.jackson.databind.JsonNode;

@RegisterTest
class RecallsTests {

    private static final String NOBODY = "00000000-0000-7000-8000-000000000000";

    private final Api.Session clerk;
    private final Given given;
    private final Tables tables;
    private final JdbcClient jdbc;
    private final RecallSweep sweep;
    /** A maker of this test alone: the recalls of one test must not hold what others register. */
    private final String maker = "R" + Given.serial();

    RecallsTests(Api api, Given given, Tables tables, JdbcClient jdbc, RecallSweep sweep) {
        this.clerk = api.as(Role.CLERK);
        this.given = given;
        this.tables = tables;
        this.jdbc = jdbc;
        this.sweep = sweep;
    }

    private UUID made(String serial, @Nullable String month, String specification) {
        return given.registered(cylinder(serial, month, specification));
    }

    private Map<String, @Nullable Object> cylinder(String serial, @Nullable String month, String specification) {
        var body = Given.cylinder();
        body.put("maker", maker);
        body.put("serial", serial);
        body.put("manufactured", month);
        body.put("specification", specification);
        return body;
    }

    private Map<String, @Nullable Object> recall(Object... pairs) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("maker", maker);
        body.put("issuedBy", "the maker");
        for (int i = 0; i < pairs.length; i += 2) {
            body.put(pairs[i].toString(), pairs[i + 1]);
        }
        return body;
    }

    /** Those of the answer and of all pages behind it: what others registered without a maker is not compared either. */
    private List<JsonNode> accounted(Answer answer) {
        var rows = new ArrayList<JsonNode>();
        var path = "/api/recalls/" + answer.text("/recall/id") + "?size=1000&cursor=";
        for (var page = answer;; page = clerk.get(path + page.text("/containers/next")).expect(200)) {
            page.at("/containers/items").forEach(rows::add);
            if (page.at("/containers/next").isMissingNode()) {
                return rows;
            }
        }
    }

    /** Of this test's own. */
    private Map<String, String> outcomes(Answer answer) {
        var outcomes = new TreeMap<String, String>();
        accounted(answer).stream().filter(one -> one.at("/maker").asString().equals(maker))
                .forEach(one -> outcomes.put(one.at("/serial").asString(),
                        one.at("/outcome").asString() + one.at("/unknown").toString().replace("\"", "")));
        return outcomes;
    }

    private static String counts(Answer answer) {
        return answer.text("/counts/matched") + "/" + answer.text("/counts/held") + "/"
                + answer.text("/counts/standing")
                + "/" + answer.text("/counts/alreadyHeld");
    }

    private String status(UUID container) {
        return jdbc.sql("select standing from requirement where container_id = ? and decisive").param(container)
                .query(String.class).single();
    }

    @Test
    void allThatMatchIsHeldAndEachRowAccountedFor() {
        var first = made("AB1000", "3-16", "DOT-4BA240");
        var last = made("AB1999", "3-16", "DOT-4BA240");
        made("AB2000", "3-16", "DOT-4BA240");
        made("AB999", "3-16", "DOT-4BA240");
        made("AB-1500", "3-16", "DOT-4BA240");
        made("AB1500", "3-15", "DOT-4BA240");
        made("AB1501", "3-16", "DOT-4BW240");
        made("AB1502", null, "DOT-4BA240");
        given.registered();
        clerk.post("/api/containers/" + last + "/holds", Map.of("reason", "LOST")).expect(201);

        var answer = clerk.post("/api/recalls", recall("serialFirst", "AB1000", "serialLast", "AB1999",
                "manufacturedFirst", "2016-01", "manufacturedLast", "2016-06", "specification", "DOT-4BA240", "lot",
                "L7", "reference", "26-014", "occurredAt", "2026-11-20T00:00:00Z")).expect(201);
        assertThat(counts(answer)).isEqualTo("2/2/2/1");
        assertThat(outcomes(answer)).isEqualTo(Map.of("AB1000", "HELD[]", "AB1999", "HELD[]", "AB999",
                "NOT_COMPARED[serial]", "AB-1500", "NOT_COMPARED[serial]", "AB1502", "NOT_COMPARED[manufactured]"));
        assertThat(answer.at("/counts/notCompared").asInt()).isEqualTo((int) accounted(answer).stream()
                .filter(one -> one.at("/outcome").asString().equals("NOT_COMPARED")).count())
                .isGreaterThanOrEqualTo(3);
        assertThat(clerk.get(answer.header("Location") + "?outcome=NOT_COMPARED").at("/containers/items"))
                .isNotEmpty().allSatisfy(one -> assertThat(one.at("/outcome").asString()).isEqualTo("NOT_COMPARED"));
        assertThat(status(first)).isEqualTo("ON_HOLD");

        var hold = clerk.get("/api/containers/" + first + "/holds").expect(200);
        assertThat(hold.text("/items/0/reason")).isEqualTo("RECALLED");
        assertThat(hold.text("/items/0/note")).isEqualTo("Recall 26-014 by the maker, lot L7");
        assertThat(hold.text("/items/0/recall")).isEqualTo(answer.text("/recall/id"));
        assertThat(hold.text("/items/0/occurredAt")).isEqualTo("2026-11-20T00:00:00Z");

        var read = clerk.get(answer.header("Location")).expect(200);
        assertThat(outcomes(read)).isEqualTo(outcomes(answer));
        assertThat(counts(read)).isEqualTo(counts(answer));
        assertThat(outcomes(clerk.get(answer.header("Location") + "?outcome=held").expect(200)).keySet())
                .containsExactly("AB1000", "AB1999");
        assertThat(clerk.get("/api/recalls").expect(200).text("/items/0/id")).isEqualTo(answer.text("/recall/id"));
    }

    /** A dual mark is either; where the pressure is not told of one, nobody knows. */
    @ParameterizedTest
    @CsvSource({"DOT-4BA240,DOT-4BA240,HELD", "DOT-4BA240/TC-4BAM17,DOT-4BA240,HELD",
            "DOT-4BA240/TC-4BAM17,TC-4BAM17,HELD", "DOT-4BA240,DOT-4BA240/TC-4BAM17,HELD", "DOT-4BW240,DOT-4BA240,",
            "DOT-4BA,DOT-4BA240,NOT_COMPARED", "DOT-4BA240,DOT-4BA,NOT_COMPARED", "DOT-4E240,DOT-4BA240,"})
    void aSpecificationIsComparedByItsMarks(String stamped, String told, @Nullable String outcome) {
        made("AB1", "3-16", stamped);
        var answer = clerk.post("/api/recalls", recall("specification", told)).expect(201);
        assertThat(outcomes(answer)).as(answer.body()).isEqualTo(outcome == null
                ? Map.of()
                : Map.of("AB1", outcome + (outcome.equals("HELD") ? "[]" : "[specification]")));
    }

    /** Of a container whose maker is not known nobody can say that it is not recalled. */
    @Test
    void anUnknownMakerIsNotCompared() {
        var body = cylinder(Given.serial() + "0", "1962-01", "DOT-4BA240");
        body.put("maker", null);
        var id = given.registered(body);
        var recall = clerk.post("/api/recalls", recall("manufacturedFirst", "1962-01", "manufacturedLast", "1962-01"))
                .expect(201);
        var found = accounted(recall).stream()
                .filter(one -> one.at("/id").asString().equals(id.toString())).toList();
        assertThat(found).hasSize(1);
        assertThat(found.getFirst().at("/outcome").asString()).isEqualTo("NOT_COMPARED");
        assertThat(found.getFirst().at("/unknown/0").asString()).isEqualTo("maker");
        assertThat(status(id)).isNotEqualTo("ON_HOLD");
    }

    @Test
    void whatRegistersLaterIsHeldWithItsRegistrationUntilTheRecallEnds() {
        var recall = clerk.post("/api/recalls", recall("serialFirst", "X01", "serialLast", "X50")).expect(201);
        var path = "/api/recalls/" + recall.text("/recall/id");
        assertThat(counts(recall)).isEqualTo("0/0/0/0");
        var later = made("X50", "3-16", "DOT-4BA240");
        assertThat(status(later)).isEqualTo("ON_HOLD");
        made("X51", "3-16", "DOT-4BA240");
        assertThat(counts(clerk.get(path))).isEqualTo("1/1/1/0");

        clerk.post(path + "/end", Map.of("reason", "all were found")).expect(200);
        tables.unchangedBy(() -> clerk.post(path + "/end", Map.of("reason", "again"))
                .expectProblem(409, "RECALL_ENDED"));
        var after = made("X02", "3-16", "DOT-4BA240");
        assertThat(status(after)).isNotEqualTo("ON_HOLD");
        assertThat(status(later)).as("its hold is lifted by itself alone").isEqualTo("ON_HOLD");
        var read = clerk.get(path).expect(200);
        assertThat(outcomes(read)).isEqualTo(Map.of("X50", "HELD[]", "X02", "MATCHED[]"));
        assertThat(read.text("/recall/end/reason")).isEqualTo("all were found");
    }

    @Test
    void marksThatAreCorrectedAreMatchedAnew() {
        var body = cylinder("Y-01", "3-16", "DOT-4BA240");
        var id = given.registered(body);
        var recall = clerk.post("/api/recalls", recall("serialFirst", "Y01", "serialLast", "Y50")).expect(201);
        assertThat(outcomes(recall)).isEqualTo(Map.of("Y-01", "NOT_COMPARED[serial]"));
        body.put("serial", "Y01");
        body.put("reason", "the dash is a scratch");
        clerk.ifMatch(clerk.get("/api/containers/" + id)).put("/api/containers/" + id, body).expect(200);
        assertThat(status(id)).isEqualTo("ON_HOLD");
    }

    /** Once the maker's remedy is done the hold is lifted, and no later sweep places it again. */
    @Test
    void aLiftedOneStaysLifted() {
        var id = made("AB1", "3-16", "DOT-4BA240");
        var recall = clerk.post("/api/recalls", recall()).expect(201);
        var hold = clerk.get("/api/containers/" + id + "/holds").text("/items/0/id");
        clerk.post("/api/holds/" + hold + "/lifts", Map.of("by", "CLERK", "note", "valve exchanged by the maker"))
                .expect(201);
        sweep.over(UUID.fromString(recall.text("/recall/id")));
        assertThat(status(id)).isNotEqualTo("ON_HOLD");
        assertThat(outcomes(clerk.get("/api/recalls/" + recall.text("/recall/id"))))
                .isEqualTo(Map.of("AB1", "LIFTED[]"));
    }

    @Test
    void manyAreHeldInSeveralTransactions() {
        int many = RecallSweep.CHUNK * 2 + 7;
        jdbc.sql("""
                insert into container (id, kind, mark_scheme, specification, maker, serial, manufactured, size,
                    registered_by)
                select uuidv7(), kind, mark_scheme, specification, :maker, 'M' || lpad(n::text, 5, '0'),
                    manufactured, size, registered_by
                from container, generate_series(1, :many) n where id = :like""").param("maker", maker)
                .param("many", many).param("like", given.registered()).update();
        var recall = clerk.post("/api/recalls", recall("serialFirst", "M00001", "serialLast", "M99999")).expect(201);
        assertThat(counts(recall)).isEqualTo(many + "/" + RecallSweep.CHUNK + "/" + RecallSweep.CHUNK + "/0");
        var after = clerk.get("/api/recalls/" + recall.text("/recall/id")).expect(200);
        assertThat(counts(after)).isEqualTo(many + "/" + many + "/" + many + "/0");
        assertThat(jdbc.sql("""
                select count(*) from requirement r join container c on c.id = r.container_id
                where c.maker = ? and r.decisive and r.standing = 'ON_HOLD'""").param(maker).query(Long.class).single())
                .isEqualTo(many);
    }

    /** As after a killed service: the recall is recorded, and little is held. */
    @Test
    void aSweepThatWasInterruptedIsGoneOnWith() {
        var id = made("AB1", "3-16", "DOT-4BA240");
        var recall = Ids.next();
        jdbc.sql("""
                insert into recall (id, maker, issued_by, occurred_at, recorded_by)
                values (?, ?, 'the maker', now() - interval '300 days', gen_random_uuid())""").params(recall, maker)
                .update();
        jdbc.sql("insert into recall_sweep (recall_id) values (?)").param(recall).update();
        sweep.run();
        assertThat(counts(clerk.get("/api/recalls/" + recall).expect(200))).isEqualTo("1/1/1/0");
        assertThat(clerk.get("/api/containers/" + id + "/holds").at("/items")).hasSize(1);
        assertThat(clerk.get("/api/recalls/" + recall).at("/recall/swept").asBoolean()).isTrue();
    }

    @Test
    void aRepeatUnderTheSameKeyRecordsOnce() {
        made("AB1", "3-16", "DOT-4BA240");
        var once = clerk.with("Idempotency-Key", Given.serial());
        var first = once.post("/api/recalls", recall()).expect(201);
        tables.unchangedBy(() -> assertThat(once.post("/api/recalls", recall()).expect(201).json())
                .isEqualTo(first.json()));
    }

    @Test
    void unknownOnesAreNotFoundAndOthersMayNotRecall() {
        tables.unchangedBy(() -> {
            clerk.get("/api/recalls/" + NOBODY).expectProblem(404, "NOT_FOUND");
            clerk.post("/api/recalls/" + NOBODY + "/end", Map.of("reason", "over")).expectProblem(404, "NOT_FOUND");
            clerk.get("/api/recalls/" + NOBODY + "?outcome=LOST").expectProblem(400, "INVALID_INPUT");
        });
    }
}
