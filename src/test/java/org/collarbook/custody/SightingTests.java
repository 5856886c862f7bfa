package org.collarbook.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
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

/** Where containers are seen, and which places claim them. */
@RegisterTest
class SightingTests {

    private static final String NOBODY = "00000000-0000-7000-8000-000000000000";

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final JdbcClient jdbc;

    private final UUID container;
    private final UUID depot;
    private final UUID farm;

    SightingTests(Api api, Given given, Tables tables, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.jdbc = jdbc;
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        container = given.registered(body);
        depot = given.site(null);
        farm = given.site(given.customer());
        given.moved(container, depot, "2026-11-20T08:00:00Z");
    }

    private static Map<String, @Nullable Object> sighting(@Nullable UUID container, @Nullable UUID site, String at) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("containerId", container);
        body.put("site", site);
        body.put("occurredAt", at);
        return body;
    }

    private Answer seen(UUID site, String at) {
        return api.as(Role.FILLER).post("/api/sightings", sighting(container, site, at)).expect(201);
    }

    private Answer moved(@Nullable UUID from, UUID to, String at) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("containerId", container);
        body.put("toSite", to);
        body.put("fromSite", from);
        body.put("occurredAt", at);
        return api.as(Role.YARD).post("/api/movements", body);
    }

    private Answer read() {
        return api.as(Role.FILLER).get("/api/containers/" + container).expect(200);
    }

    /** The sites that claim it, the recorded one first. */
    private List<String> claims() {
        var sites = new ArrayList<String>();
        read().at("/placeDisputed").forEach(claim -> sites.add(claim.at("/site/id").asString()));
        return sites;
    }

    private UUID place() {
        return jdbc.sql("select site_id from placement where container_id = ?").param(container).query(UUID.class)
                .single();
    }

    private List<String> disputesOf(UUID site) {
        return api.as(Role.DISPATCHER).get("/api/place-disputes?site=" + site).expect(200).at("/items")
                .findValuesAsString("containerId");
    }

    @Test
    void seenWhereItIsRecordedConfirmsAndMovesNothing() {
        var answer = seen(depot, "2026-11-21T08:00:00Z");
        assertThat(answer.at("/confirms").booleanValue()).isTrue();
        assertThat(answer.at("/placeDisputed").isMissingNode()).isTrue();
        assertThat(read().at("/placeDisputed").isMissingNode()).isTrue();
        assertThat(disputesOf(depot)).isEmpty();
        assertThat(api.as(Role.FILLER).get("/api/containers/" + container + "/movements").at("/items")).hasSize(1);
        var told = api.as(Role.FILLER).get(answer.header("Location")).expect(200);
        assertThat(told.text("/items/0/id")).isEqualTo(answer.id());
        assertThat(told.text("/items/0/site")).isEqualTo(depot.toString());
    }

    @Test
    void seenElsewhereBothPlacesAreTold() {
        var answer = seen(farm, "2026-11-21T08:00:00Z");
        assertThat(answer.at("/confirms").booleanValue()).isFalse();
        seen(farm, "2026-11-21T09:00:00Z");
        assertThat(place()).as("no sighting moves it").isEqualTo(depot);
        var read = read();
        assertThat(read.at("/placeDisputed")).isEqualTo(answer.at("/placeDisputed")).hasSize(2);
        assertThat(read.text("/placeDisputed/0/site/id")).isEqualTo(depot.toString());
        assertThat(read.at("/placeDisputed/0/recorded").booleanValue()).isTrue();
        assertThat(read.text("/placeDisputed/0/since")).isEqualTo("2026-11-20T08:00:00Z");
        assertThat(read.text("/placeDisputed/1/site/id")).isEqualTo(farm.toString());
        assertThat(read.at("/placeDisputed/1/recorded").booleanValue()).isFalse();
        assertThat(read.text("/placeDisputed/1/since")).as("since it was first seen there")
                .isEqualTo("2026-11-21T08:00:00Z");
        assertThat(disputesOf(depot)).containsExactly(container.toString());
        assertThat(disputesOf(farm)).containsExactly(container.toString());
        var check = api.as(Role.FILLER).get("/api/fill-check?specificGravity=0.508&serial=" + read.text("/serial"))
                .expect(200);
        assertThat(check.at("/reasons").findValuesAsString("code")).contains("PLACE_DISPUTED");
        var listed = api.as(Role.FILLER).get("/api/containers?serial=" + read.text("/serial")).expect(200);
        assertThat(listed.at("/items/0/placeDisputed")).isEqualTo(read.at("/placeDisputed"));
    }

    @Test
    void aLaterLookAtTheRecordedPlaceEndsIt() {
        seen(farm, "2026-11-21T08:00:00Z");
        seen(depot, "2026-11-21T07:00:00Z");
        assertThat(claims()).as("an earlier look").hasSize(2);
        seen(depot, "2026-11-21T08:00:00Z");
        assertThat(claims()).as("at the same moment").hasSize(2);
        assertThat(seen(depot, "2026-11-21T10:00:00Z").at("/placeDisputed").isMissingNode()).isTrue();
        assertThat(claims()).isEmpty();
        assertThat(disputesOf(farm)).isEmpty();
        seen(farm, "2026-11-21T09:00:00Z");
        assertThat(claims()).as("told late").isEmpty();
    }

    @Test
    void aLaterMovementEndsItAndAnEarlierOneDoesNot() {
        seen(farm, "2026-11-21T08:00:00Z");
        var shop = given.site(null);
        moved(null, shop, "2026-11-21T07:00:00Z").expect(201);
        assertThat(claims()).containsExactly(shop.toString(), farm.toString());
        assertThat(moved(null, depot, "2026-11-22T07:00:00Z").expect(201).at("/disputed").booleanValue()).isFalse();
        assertThat(claims()).isEmpty();
        assertThat(api.as(Role.YARD).get("/api/containers/" + container + "/movements")
                .at("/items/0/fromSite").isMissingNode()).as("nobody knows from which").isTrue();
    }

    @Test
    void itMayBeMovedFromAPlaceThatClaimsIt() {
        var shop = given.site(null);
        tables.unchangedBy(() -> moved(farm, shop, "2026-11-21T08:00:00Z").expectProblem(409, "PLACE_DISPUTED"));
        seen(farm, "2026-11-21T08:00:00Z");
        tables.unchangedBy(() -> {
            moved(farm, shop, "2026-11-21T07:59:00Z").expectProblem(409, "PLACE_DISPUTED");
            moved(shop, farm, "2026-11-21T09:00:00Z").expectProblem(409, "PLACE_DISPUTED");
        });
        moved(farm, shop, "2026-11-21T08:00:00Z").expect(201);
        assertThat(place()).isEqualTo(shop);
        assertThat(claims()).as("taken away from where it was seen").isEmpty();
        assertThat(api.as(Role.YARD).get("/api/containers/" + container + "/movements").text("/items/0/fromSite"))
                .isEqualTo(farm.toString());
    }

    @Test
    void ofTwoMovesAtOneMomentTheFirstRecordedStandsAndBothAreTold() {
        var at = "2026-11-22T08:00:00Z";
        var shop = given.site(null);
        moved(null, farm, at).expect(201);
        var second = moved(null, shop, at).expect(201);
        assertThat(second.at("/moved").booleanValue()).isFalse();
        assertThat(second.at("/disputed").booleanValue()).isTrue();
        assertThat(place()).isEqualTo(farm);
        assertThat(claims()).containsExactly(farm.toString(), shop.toString());
        assertThat(api.as(Role.FILLER).get("/api/containers/" + container + "/assessment?on=2026-11-25")
                .text("/status")).isEqualTo("IN_DATE");
        seen(farm, "2026-11-22T09:00:00Z");
        assertThat(claims()).isEmpty();
    }

    /** A device that tells minutes. */
    @Test
    void aMoveThatStartsWhereAnotherOfThatMomentLedFollowsIt() {
        var at = "2026-11-22T08:00:00Z";
        var shop = given.site(null);
        moved(depot, farm, at).expect(201);
        assertThat(moved(farm, shop, at).expect(201).at("/moved").booleanValue()).isTrue();
        assertThat(place()).isEqualTo(shop);
        assertThat(claims()).isEmpty();
    }

    @Test
    void whatStandsNowhereIsSeenAndNotPlaced() {
        var other = given.registered();
        var answer = api.as(Role.YARD).post("/api/sightings", sighting(other, farm, "2026-11-21T08:00:00Z"))
                .expect(201);
        assertThat(answer.at("/confirms").booleanValue()).isFalse();
        assertThat(answer.at("/placeDisputed").isMissingNode()).isTrue();
        given.moved(other, depot, "2026-11-20T08:00:00Z");
        assertThat(api.as(Role.YARD).get("/api/containers/" + other).at("/placeDisputed")).hasSize(2);
    }

    @Test
    void disputesAreListedByPages() {
        var body = Given.cylinder();
        var site = given.site(null);
        var ids = new ArrayList<String>();
        for (int i = 0; i < 5; i++) {
            body.put("serial", Given.serial());
            var id = given.registered(body);
            given.moved(id, depot, "2026-11-20T08:00:00Z");
            api.as(Role.YARD).post("/api/sightings", sighting(id, site, "2026-11-21T08:00:00Z")).expect(201);
            ids.add(id.toString());
        }
        var dispatcher = api.as(Role.DISPATCHER);
        var told = new ArrayList<String>();
        var cursor = "";
        do {
            var page = dispatcher.get("/api/place-disputes?size=2&site=" + site + "&cursor=" + cursor).expect(200);
            told.addAll(page.at("/items").findValuesAsString("containerId"));
            assertThat(page.at("/items").get(0).at("/claims")).hasSize(2);
            cursor = page.json().path("next").asString("");
        } while (!cursor.isEmpty());
        assertThat(told).containsExactlyInAnyOrderElementsOf(ids);
        assertThat(dispatcher.get("/api/place-disputes?size=1000").expect(200).at("/items")
                .findValuesAsString("containerId")).containsAll(ids);
        dispatcher.get("/api/place-disputes?site=" + NOBODY).expectProblem(404, "NOT_FOUND");
        assertThat(dispatcher.get("/api/place-disputes?cursor=x").expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("cursor", "INVALID_CURSOR"));
    }

    @Test
    void wrongSightingsAreRefusedByFieldAndCode() {
        var unknown = UUID.fromString(NOBODY);
        var at = "2026-11-24T08:00:00Z";
        tables.unchangedBy(() -> {
            refused(Map.of(), Map.of("/containerId", "MISSING", "/site", "MISSING", "/occurredAt", "MISSING"));
            refused(sighting(unknown, depot, at), Map.of("/containerId", "UNKNOWN_CONTAINER"));
            refused(sighting(container, unknown, at), Map.of("/site", "UNKNOWN_SITE"));
            refused(sighting(container, depot, "yesterday"), Map.of("/occurredAt", "WRONG_TYPE"));
            refused(sighting(container, depot, "2026-11-25T12:05:01Z"), Map.of("/occurredAt", "IN_THE_FUTURE"));
            refused(sighting(container, depot, "1000-01-01T00:00:00Z"), Map.of("/occurredAt", "OUT_OF_RANGE"));
            var more = sighting(container, depot, at);
            more.put("toSite", farm);
            refused(more, Map.of("/toSite", "UNKNOWN_FIELD"));
            api.as(Role.YARD).get("/api/containers/" + NOBODY + "/sightings").expectProblem(404, "NOT_FOUND");
            api.as(Role.YARD).get("/api/containers/" + container + "/sightings?cursor=x")
                    .expectProblem(400, "INVALID_INPUT");
        });
    }

    private void refused(Map<String, @Nullable Object> body, Map<String, String> errors) {
        assertThat(api.as(Role.YARD).post("/api/sightings", body).expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(errors);
    }

    @Test
    void aRepeatUnderTheSameKeyIsOneSighting() {
        var body = sighting(container, farm, "2026-11-24T08:00:00Z");
        var once = api.as(Role.YARD).with("Idempotency-Key", Given.serial());
        var first = once.post("/api/sightings", body).expect(201);
        tables.unchangedBy(() -> assertThat(once.post("/api/sightings", body).expect(201).json())
                .isEqualTo(first.json()));
    }

    @Test
    void sightingsAreListedByPagesAndStandInTheHistory() {
        for (int day = 21; day < 25; day++) {
            seen(farm, "2026-11-" + day + "T08:00:00Z");
        }
        var clerk = api.as(Role.CLERK);
        var path = "/api/containers/" + container;
        var first = clerk.get(path + "/sightings?size=3").expect(200);
        var second = clerk.get(path + "/sightings?size=3&cursor=" + first.text("/next")).expect(200);
        assertThat(first.at("/items")).hasSize(3);
        assertThat(second.at("/items").findValuesAsString("occurredAt")).containsExactly("2026-11-21T08:00:00Z");
        var history = clerk.get(path + "/history").expect(200);
        assertThat(history.text("/items/1/kind")).isEqualTo("SEEN");
        assertThat(history.text("/items/1/content/siteId")).isEqualTo(farm.toString());
        assertThat(clerk.get("/api/audit/verification?container=" + container).at("/whole").asBoolean()).isTrue();
    }
}
