package org.collarbook.dispatch.lists;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.compliance.Requirements;
import org.collarbook.holds.HoldReason;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.JsonNode;

/** What must come back from nobody knows where; due months by 49 CFR 180.209(e), today is 2026-11-25. */
@RegisterTest
class PlaceUnknownTests {

    private final Api api;
    private final Given given;

    private final JdbcClient jdbc;
    private final Requirements requirements;
    private final TransactionTemplate transaction;

    PlaceUnknownTests(Api api, Given given, JdbcClient jdbc, Requirements requirements,
            TransactionTemplate transaction) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
        this.requirements = requirements;
        this.transaction = transaction;
    }

    /** Nobody ever told where it stands, only by a declaration that it is in the US. */
    private UUID cylinder(String manufactured) {
        var body = Given.cylinder();
        body.put("manufactured", manufactured);
        var id = given.registered(body);
        var declaration = UUID.randomUUID();
        jdbc.sql("insert into declaration (id, declared_by, declared_on, statement, jurisdiction, recorded_by)"
                + " values (?, 'B. Lorne', '2026-11-01', 'ours stay in the US', 'US', ?)")
                .params(declaration, UUID.randomUUID()).update();
        jdbc.sql("update container set declaration_id = ? where id = ?").params(declaration, id).update();
        transaction.executeWithoutResult(status -> requirements.reassess(List.of(id)));
        return id;
    }

    /** All pages; other tests leave containers without a place as well. */
    private List<JsonNode> listed(String before, int size) {
        var all = new ArrayList<JsonNode>();
        var cursor = "";
        do {
            var page = api.as(Role.DISPATCHER).get("/api/pull-list/place-unknown?before=" + before + "&size=" + size
                    + "&cursor=" + cursor).expect(200);
            page.at("/items").forEach(all::add);
            cursor = page.at("/next").asString("");
        } while (!cursor.isEmpty());
        return all;
    }

    private static JsonNode of(UUID id, List<JsonNode> listed) {
        return listed.stream().filter(one -> one.at("/id").asString().equals(id.toString())).findFirst()
                .orElseThrow(() -> new AssertionError(id + " is not listed"));
    }

    private static List<String> ids(List<JsonNode> listed) {
        return listed.stream().map(one -> one.at("/id").asString()).toList();
    }

    @ParameterizedTest
    @CsvSource({"2026-12-31, false", "2027-01-01, true"})
    void listsWhatHasItsLastDayBeforeTheDate(String before, boolean listed) {
        var id = cylinder("2014-12");
        assertThat(ids(listed(before, 1000)).contains(id.toString())).isEqualTo(listed);
    }

    @Test
    void tellsWhyAndLeavesOutWhatHasAPlace() {
        var overdue = cylinder("2010-05");
        var held = cylinder("2024-01");
        api.as(Role.FILLER).post("/api/containers/" + held + "/holds", Map.of("reason", HoldReason.LOST)).expect(201);
        var placed = cylinder("2010-05");
        given.moved(placed, given.site(null), "2026-11-20T09:00:00Z");
        var listed = listed("2026-12-01", 1000);
        assertThat(of(overdue, listed).at("/status").asString()).isEqualTo("OVERDUE");
        assertThat(of(overdue, listed).at("/lastDay").asString()).isEqualTo("2022-05-31");
        assertThat(of(overdue, listed).at("/reason/citation/section").asString()).isEqualTo("180.209(e)");
        assertThat(of(held, listed).at("/status").asString()).isEqualTo("ON_HOLD");
        assertThat(of(held, listed).at("/reason/text").asString()).isEqualTo("A hold stands. It is lost.");
        assertThat(ids(listed)).doesNotContain(placed.toString());
    }

    /** Where nobody knows which law governs it, it cannot be told that it is not overdue: it comes last. */
    @Test
    void whatCannotBeToldComesLast() {
        var unknown = given.registered();
        var overdue = cylinder("2010-05");
        var listed = listed("2026-12-01", 1000);
        assertThat(of(unknown, listed).at("/status").asString()).isEqualTo("UNDETERMINED");
        assertThat(of(unknown, listed).at("/reason/code").asString()).isEqualTo("UNDETERMINED");
        assertThat(of(unknown, listed).at("/reason/text").asString()).contains("The jurisdiction is not known.");
        assertThat(ids(listed)).containsSubsequence(overdue.toString(), unknown.toString());
    }

    @Test
    void pagesAreTheListCutUp() {
        given.registered();
        for (int i = 0; i < 5; i++) {
            cylinder("2010-0" + (1 + i % 2));
        }
        var whole = ids(listed("2027-06-01", 1000));
        assertThat(whole).hasSizeGreaterThanOrEqualTo(5).doesNotHaveDuplicates();
        assertThat(ids(listed("2027-06-01", 2))).isEqualTo(whole);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"x=1", "before=soon", "before=2026-02-30", "before=1999-12-31",
            "before=2027-01-01&size=0", "before=2027-01-01&size=1001", "before=2027-01-01&cursor=x",
            "before=2027-01-01&cursor=LWluZmluaXR5H3g"})
    void badQuestionsAreRefused(String query) {
        api.as(Role.DISPATCHER).get("/api/pull-list/place-unknown?" + query).expectProblem(400, "INVALID_INPUT");
    }
}
