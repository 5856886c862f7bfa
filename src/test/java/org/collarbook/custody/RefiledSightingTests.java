package org.collarbook.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Merges, splits and what undoes them carry sightings along, and the disputes that follow from them. */
@RegisterTest
class RefiledSightingTests {

    private final Api.Session clerk;
    private final Given given;
    private final Tables tables;
    private final JdbcClient jdbc;

    private final UUID kept;
    private final UUID depot;
    private final UUID farm;

    RefiledSightingTests(Api api, Given given, Tables tables, JdbcClient jdbc) {
        this.clerk = api.as(Role.CLERK);
        this.given = given;
        this.tables = tables;
        this.jdbc = jdbc;
        kept = given.registered();
        depot = given.site(null);
        farm = given.site(given.customer());
        given.moved(kept, depot, "2026-11-20T09:00:00Z");
    }

    private String seen(UUID container, UUID site, String at) {
        return clerk.post("/api/sightings", Map.of("containerId", container, "site", site, "occurredAt", at))
                .expect(201).id();
    }

    private static String path(Object container) {
        return "/api/containers/" + container;
    }

    private int claims(Object container) {
        return clerk.get(path(container)).expect(200).at("/placeDisputed").size();
    }

    private Answer act(String what, Map<String, Object> body) {
        return clerk.ifMatch(clerk.get(path(kept))).post(path(kept) + what, body).expect(201);
    }

    private void undo(Answer act) {
        clerk.post("/api/identity-acts/" + act.id() + "/undo", Map.of("reason", "two after all", "fillWillBeAllowed",
                true)).expect(200);
    }

    private void assertChainsHold(Object other) {
        for (var id : List.of(kept, other)) {
            assertThat(clerk.get("/api/audit/verification?container=" + id).expect(200).at("/broken")).isEmpty();
        }
    }

    @Test
    void aSightingOfTheOtherRecordDisputesThePlaceOfTheOne() {
        var other = given.registered();
        seen(other, farm, "2026-11-21T09:00:00Z");
        assertThat(claims(other)).isZero();

        var merged = act("/merges", Map.of("absorbed", other, "setAside", List.of("serial"), "reason", "misread"));
        assertThat(claims(kept)).isEqualTo(2);
        assertThat(claims(other)).isZero();
        assertThat(clerk.get(path(kept) + "/sightings").at("/items")).hasSize(1);
        tables.unchangedBy(() -> clerk.post("/api/sightings", Map.of("containerId", other, "site", farm, "occurredAt",
                "2026-11-22T09:00:00Z")).expectProblem(409, "MERGED"));

        undo(merged);
        assertThat(claims(kept)).isZero();
        assertThat(clerk.get(path(other) + "/sightings").at("/items")).hasSize(1);
        assertChainsHold(other);
    }

    @Test
    void aSightingGoesWithTheSecondOfTwo() {
        var fact = seen(kept, farm, "2026-11-21T09:00:00Z");
        assertThat(claims(kept)).isEqualTo(2);
        var second = Given.cylinder();
        second.remove("collarRead");
        var body = new HashMap<String, Object>(Map.of("container", second, "facts", List.of(fact), "reason",
                "two with one number"));
        var split = act("/splits", body);
        assertThat(claims(kept)).isZero();
        assertThat(claims(split.text("/other"))).isZero();
        assertThat(clerk.get(path(split.text("/other")) + "/sightings").at("/items")).hasSize(1);
        undo(split);
        assertThat(claims(kept)).isEqualTo(2);
        assertChainsHold(split.text("/other"));
    }

    /** What was derived step by step is what is derived at once. */
    @Test
    void anActAndItsUndoingLeaveThePlacesAsTheyWere() {
        seen(kept, farm, "2026-11-21T09:00:00Z");
        given.moved(kept, farm, "2026-11-20T09:00:00Z");
        given.moved(kept, given.site(null), "2026-11-19T09:00:00Z");
        var before = stored();
        var other = given.registered();
        given.moved(other, given.site(null), "2026-11-23T09:00:00Z");
        var merged = act("/merges", Map.of("absorbed", other, "setAside", List.of("serial"), "reason", "misread"));
        assertThat(stored()).isNotEqualTo(before);
        undo(merged);
        assertThat(stored()).isEqualTo(before);
    }

    private List<String> stored() {
        return jdbc.sql("select p::text from placement p where container_id = :id union all"
                + " select k::text from place_claim k where container_id = :id order by 1").param("id", kept)
                .query(String.class).list();
    }
}
