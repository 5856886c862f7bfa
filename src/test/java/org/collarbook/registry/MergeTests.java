package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
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

/** A cylinder that was registered twice, the second time with a misread serial. */
@RegisterTest
class MergeTests {

    private final Api.Session clerk;
    private final Api.Session filler;
    private final Given given;
    private final Tables tables;
    private final JdbcClient jdbc;

    private final Answer kept;
    private final Answer other;
    private final Map<String, @Nullable Object> misread = Given.cylinder();

    MergeTests(Api api, Given given, Tables tables, JdbcClient jdbc) {
        this.clerk = api.as(Role.CLERK);
        this.filler = api.as(Role.FILLER);
        this.given = given;
        this.tables = tables;
        this.jdbc = jdbc;
        kept = clerk.post("/api/containers", Given.cylinder()).expect(201);
        misread.put("tag", Given.serial());
        other = clerk.post("/api/containers", misread).expect(201);
    }

    private static String path(Answer container) {
        return "/api/containers/" + container.id();
    }

    private Answer merge(String... setAside) {
        return clerk.ifMatch(kept).post(path(kept) + "/merges", Map.of("absorbed", other.id(), "setAside",
                List.of(setAside), "reason", "the B of the serial was read as 8"));
    }

    private Answer undo(Answer act) {
        return clerk.post("/api/identity-acts/" + act.id() + "/undo",
                Map.of("reason", "two cylinders after all", "fillWillBeAllowed", true));
    }

    private Answer hold(Answer container, String reason) {
        return clerk.post(path(container) + "/holds", Map.of("reason", reason)).expect(201);
    }

    private String broken() {
        return clerk.get("/api/audit/verification?container=" + kept.id()).expect(200).at("/broken").toString()
                + clerk.get("/api/audit/verification?container=" + other.id()).expect(200).at("/broken");
    }

    @Test
    void whatTheOtherRecordSaysOtherwiseMustBeSeen() {
        tables.unchangedBy(() -> {
            var refused = merge().expectProblem(409, "MARKS_CONTRADICT");
            assertThat(refused.at("/contradictions").findValuesAsString("field")).containsExactly("serial");
            assertThat(refused.text("/contradictions/0/given")).isEqualTo(misread.get("serial"));
        });
        var act = merge("serial").expect(201);
        assertThat(act.text("/container")).isEqualTo(kept.id());
        assertThat(act.text("/other")).isEqualTo(other.id());
        assertThat(act.at("/setAside")).hasSize(1);
    }

    @Test
    void holdsOfBothStandAndEveryLookUpLeadsToTheOneThatCounts() {
        hold(other, "DENTED");
        var site = given.site(null);
        given.moved(UUID.fromString(other.id()), site, "2026-11-20T09:00:00Z");
        merge("serial").expect(201);

        var assessed = filler.get(path(kept) + "/assessment").expect(200);
        assertThat(assessed.text("/status")).isEqualTo("ON_HOLD");
        for (var query : List.of("tag=" + misread.get("tag"), "serial=" + misread.get("serial"))) {
            var check = filler.get("/api/fill-check?" + query).expect(200);
            assertThat(check.text("/container/id")).isEqualTo(kept.id());
            assertThat(check.at("/mayFill").booleanValue()).isFalse();
            assertThat(filler.get("/api/containers?" + query).text("/items/0/id")).isEqualTo(kept.id());
        }
        assertThat(filler.get("/api/tags?tag=" + misread.get("tag")).text("/containerId")).isEqualTo(kept.id());
        assertThat(filler.get(path(other)).expect(200).text("/mergedInto")).isEqualTo(kept.id());
        assertThat(filler.get(path(kept) + "/holds").expect(200).at("/items")).hasSize(1);
        assertThat(jdbc.sql("select count(*) from requirement where container_id = cast(? as uuid)")
                .param(other.id()).query(Long.class).single()).isZero();
        assertThat(jdbc.sql("select site_id from placement where container_id = cast(? as uuid)").param(kept.id())
                .query(UUID.class).single()).isEqualTo(site);
        assertThat(jdbc.sql("select count(*) from placement where container_id = cast(? as uuid)")
                .param(other.id()).query(Long.class).single()).isZero();
        var identity = clerk.get(path(kept) + "/identity").expect(200);
        assertThat(identity.text("/absorbed/0")).isEqualTo(other.id());
        assertThat(identity.text("/items/0/act/kind")).isEqualTo("MERGE");
        var history = clerk.get(path(kept) + "/history").expect(200);
        assertThat(history.at("/items").findValuesAsString("kind")).contains("ABSORBED", "MERGED", "MOVED");
        assertThat(history.at("/items").findValuesAsString("recordedOn")).isNotEmpty().containsOnly(other.id());
        assertThat(broken()).isEqualTo("[][]");
    }

    @Test
    void nothingIsRecordedOnAClosedRecord() {
        merge("serial").expect(201);
        var site = given.site(null);

        tables.unchangedBy(() -> {
            for (var refused : List.of(
                    clerk.post(path(other) + "/holds", Map.of("reason", "DENTED")),
                    clerk.post(path(other) + "/emptyings", Map.of("emptiedAt", "2026-11-20T09:00:00Z")),
                    clerk.post("/api/movements", Map.of("containerId", other.id(), "toSite", site, "occurredAt",
                            "2026-11-20T09:00:00Z")),
                    clerk.ifMatch(other).post(path(other) + "/tags", Map.of("tag", "X" + Given.serial(), "reason",
                            "re-tagged")),
                    clerk.ifMatch(other).post(path(other) + "/mark-corrections", Map.of("marks", Map.of("serial",
                            Given.serial()), "reason", "read anew")),
                    clerk.ifMatch(other).post(path(other) + "/merges", Map.of("absorbed", kept.id(), "setAside",
                            List.of("serial"), "reason", "the other way round")),
                    clerk.ifMatch(other).post(path(other) + "/splits", Map.of("container", Given.cylinder(), "reason",
                            "two after all")))) {
                assertThat(refused.expectProblem(409, "MERGED").text("/container")).isEqualTo(kept.id());
            }
            filler.get(path(other) + "/assessment").expectProblem(409, "MERGED");
            assertThat(clerk.post("/api/containers", misread).expectProblem(409, "NATURAL_KEY_TAKEN")
                    .text("/mergedInto")).isEqualTo(kept.id());
        });
    }

    @Test
    void undoingRestoresBothAndLeavesWhatWasRecordedSince() {
        hold(other, "DENTED");
        given.moved(UUID.fromString(other.id()), given.site(null), "2026-11-20T09:00:00Z");
        var before = List.of(state(kept), state(other));
        var act = merge("serial").expect(201);
        assertThat(state(kept)).isNotEqualTo(before.getFirst());

        var undone = undo(act).expect(200);

        assertThat(undone.text("/undone/reason")).isEqualTo("two cylinders after all");
        assertThat(List.of(state(kept), state(other))).isEqualTo(before);
        assertThat(broken()).isEqualTo("[][]");
        tables.unchangedBy(() -> undo(act).expectProblem(409, "ALREADY_UNDONE"));

        // merged once more; what comes in between stays with the record that counted
        var again = merge("serial").expect(201);
        hold(kept, "CORRODED");
        undo(again).expect(200);
        assertThat(state(other)).isEqualTo(before.getLast());
        assertThat(filler.get(path(kept) + "/holds").text("/items/0/reason")).isEqualTo("CORRODED");
        assertThat(broken()).isEqualTo("[][]");
    }

    /** What everybody is told of a record. */
    private String state(Answer container) {
        return clerk.get(path(container)).json() + "\n" + clerk.get(path(container) + "/assessment").json() + "\n"
                + clerk.get(path(container) + "/holds").json() + "\n" + clerk.get(path(container) + "/movements").json()
                + "\n" + clerk.get(path(container) + "/fills").json() + "\n" + jdbc.sql("""
                        select string_agg(told, ' ' order by told) from requirement r
                        cross join lateral (select (to_jsonb(r) - 'changed_by' - 'changed_at')::text as told) t
                        where container_id = cast(? as uuid)""").param(container.id()).query(String.class).optional()
                + jdbc.sql("select p::text from placement p where container_id = cast(? as uuid)")
                        .param(container.id()).query(String.class).optional();
    }

    @Test
    void aHoldLiftedWhileTheRecordsWereOneStandsAgainWhenTheyAreTwo() {
        hold(other, "LOST");
        var act = merge("serial").expect(201);
        var id = filler.get(path(kept) + "/holds").text("/items/0/id");
        var lifted = clerk.post("/api/holds/" + id + "/lifts", Map.of("by", "CLERK", "note",
                "found in the cage")).expect(201);
        assertThat(lifted.header("Location")).contains(kept.id());
        assertThat(broken()).as("the lift is entered where the hold was recorded").isEqualTo("[][]");
        assertThat(filler.get(path(kept) + "/holds?standing=true").at("/items")).isEmpty();

        undo(act).expect(200);

        assertThat(filler.get(path(other) + "/holds?standing=true").at("/items")).hasSize(1);
        assertThat(filler.get(path(other) + "/assessment").text("/status")).isEqualTo("ON_HOLD");
        assertThat(broken()).isEqualTo("[][]");
    }

    @Test
    void theLaterActIsUndoneFirst() {
        var first = merge("serial").expect(201);
        hold(kept, "VALVE_DEFECT");
        var third = clerk.post("/api/containers", Given.cylinder()).expect(201);
        var second = clerk.ifMatch(third).post(path(third) + "/merges", Map.of("absorbed", kept.id(), "setAside",
                List.of("serial"), "reason", "and this one too")).expect(201);
        assertThat(filler.get("/api/fill-check?tag=" + misread.get("tag")).text("/container/id"))
                .isEqualTo(third.id());
        assertThat(filler.get(path(third) + "/assessment").text("/status")).isEqualTo("ON_HOLD");

        tables.unchangedBy(() -> assertThat(undo(first).expectProblem(409, "LATER_ACT").text("/act"))
                .isEqualTo(second.id()));
        undo(second).expect(200);
        assertThat(filler.get("/api/fill-check?tag=" + misread.get("tag")).text("/container/id"))
                .isEqualTo(kept.id());
        undo(first).expect(200);
        assertThat(filler.get("/api/fill-check?tag=" + misread.get("tag")).text("/container/id"))
                .isEqualTo(other.id());
    }

    @Test
    void whatIsRefusedChangesNothing() {
        var tank = clerk.post("/api/containers", Map.of("kind", "STATIONARY_TANK", "specification", "ASME", "serial",
                Given.serial())).expect(201);
        Map<String, Object> request = Map.of("absorbed", other.id(), "setAside", List.of("serial"), "reason", "x");
        tables.unchangedBy(() -> {
            clerk.post(path(kept) + "/merges", request).expectProblem(428, "IF_MATCH_REQUIRED");
            clerk.with("If-Match", "\"5\"").post(path(kept) + "/merges", request).expectProblem(412, "STALE_VERSION");
            filler.ifMatch(kept).post(path(kept) + "/merges", request).expectProblem(403, "FORBIDDEN");
            assertThat(clerk.ifMatch(kept).post(path(kept) + "/merges", Map.of()).expectProblem(400, "INVALID_INPUT")
                    .errors()).isEqualTo(Map.of("/absorbed", "MISSING", "/reason", "MISSING"));
            clerk.ifMatch(kept).post(path(kept) + "/merges", Map.of("absorbed", kept.id(), "reason", "x"))
                    .expectProblem(400, "INVALID_INPUT");
            clerk.ifMatch(kept).post(path(kept) + "/merges", Map.of("absorbed", UUID.randomUUID(), "reason", "x"))
                    .expectProblem(404, "NOT_FOUND");
            clerk.ifMatch(kept).post(path(kept) + "/merges", Map.of("absorbed", tank.id(), "reason", "x"))
                    .expectProblem(409, "KINDS_DIFFER");
            clerk.post("/api/identity-acts/" + UUID.randomUUID() + "/undo", Map.of("reason", "x"))
                    .expectProblem(404, "NOT_FOUND");
        });
    }
}
