package org.collarbook.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

@RegisterTest
class MovementTests {

    private static final String NOBODY = "00000000-0000-7000-8000-000000000000";

    private final Api.Session yard;
    private final Given given;
    private final Tables tables;
    private final Places places;

    MovementTests(Api api, Given given, Tables tables, Places places) {
        this.yard = api.as(Role.YARD);
        this.given = given;
        this.tables = tables;
        this.places = places;
    }

    private static Map<String, @Nullable Object> to(UUID container, UUID site, String at) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("containerId", container);
        body.put("toSite", site);
        body.put("occurredAt", at);
        return body;
    }

    private UUID placeOf(UUID container) {
        return places.of(List.of(container)).get(container).siteId();
    }

    @Test
    void theLatestByWhenItHappenedDecidesThePlace() {
        var container = given.registered();
        var depot = given.site(null);
        var farm = given.site(given.customer());
        var shop = given.site(null);
        assertThat(places.of(List.of(container))).isEmpty();

        given.moved(container, depot, "2026-11-20T08:00:00Z");
        given.moved(container, farm, "2026-11-24T15:00:00Z");
        assertThat(placeOf(container)).isEqualTo(farm);

        var late = yard.post("/api/movements", to(container, shop, "2026-11-22T10:00:00Z")).expect(201);
        assertThat(late.at("/moved").booleanValue()).isFalse();
        assertThat(placeOf(container)).as("an earlier movement told late").isEqualTo(farm);

        var told = yard.get(late.header("Location")).expect(200);
        assertThat(told.at("/items").findValuesAsString("toSite"))
                .containsExactly(farm.toString(), shop.toString(), depot.toString());
        assertThat(told.text("/items/1/fromSite")).isEqualTo(depot.toString());
    }

    @Test
    void aDisputedPlaceIsAnsweredWithBothAndStoresNothing() {
        var container = given.registered();
        var depot = given.site(null);
        var farm = given.site(given.customer());
        given.moved(container, depot, "2026-11-20T08:00:00Z");
        var disputed = to(container, depot, "2026-11-24T08:00:00Z");
        disputed.put("fromSite", farm);

        tables.unchangedBy(() -> {
            var conflict = yard.post("/api/movements", disputed).expectProblem(409, "PLACE_DISPUTED");
            assertThat(conflict.text("/recordedSite/id")).isEqualTo(depot.toString());
            assertThat(conflict.text("/statedSite/id")).isEqualTo(farm.toString());
        });
        disputed.put("fromSite", depot);
        yard.post("/api/movements", disputed).expect(201);
    }

    @Test
    void whereNothingIsRecordedAStatedOriginIsTaken() {
        var container = given.registered();
        var farm = given.site(given.customer());
        var body = to(container, given.site(null), "2026-11-24T08:00:00Z");
        body.put("fromSite", farm);

        yard.post("/api/movements", body).expect(201);

        assertThat(yard.get("/api/containers/" + container + "/movements").text("/items/0/fromSite"))
                .isEqualTo(farm.toString());
    }

    @Test
    void aScannersClockMayRunAheadByFiveMinutesNotMore() {
        var container = given.registered();
        var depot = given.site(null);
        tables.unchangedBy(() -> assertThat(yard.post("/api/movements", to(container, depot, "2026-11-25T12:05:01Z"))
                .expectProblem(400, "INVALID_INPUT").errors()).isEqualTo(Map.of("/occurredAt", "IN_THE_FUTURE")));
        yard.post("/api/movements", to(container, depot, "2026-11-25T12:05:00Z")).expect(201);
    }

    @Test
    void wrongMovementsAreRefusedByFieldAndCode() {
        var container = given.registered();
        var depot = given.site(null);
        var unknown = UUID.fromString(NOBODY);
        tables.unchangedBy(() -> {
            refused(Map.of(), Map.of("/containerId", "MISSING", "/toSite", "MISSING", "/occurredAt", "MISSING"));
            refused(to(unknown, depot, "2026-11-24T08:00:00Z"), Map.of("/containerId", "UNKNOWN_CONTAINER"));
            refused(to(container, unknown, "2026-11-24T08:00:00Z"), Map.of("/toSite", "UNKNOWN_SITE"));
            refused(to(container, depot, "yesterday"), Map.of("/occurredAt", "WRONG_TYPE"));
            refused(to(container, depot, "2026-13-24T08:00:00Z"), Map.of("/occurredAt", "WRONG_TYPE"));
            refused(to(container, depot, "-100000-01-01T00:00:00Z"), Map.of("/occurredAt", "WRONG_TYPE"));
            refused(to(container, depot, "1939-12-31T23:59:59Z"), Map.of("/occurredAt", "OUT_OF_RANGE"));
            yard.get("/api/containers/" + NOBODY + "/movements").expectProblem(404, "NOT_FOUND");
            yard.get("/api/containers/" + container + "/movements?cursor=x").expectProblem(400, "INVALID_INPUT");
        });
    }

    private void refused(Map<String, @Nullable Object> body, Map<String, String> errors) {
        assertThat(yard.post("/api/movements", body).expectProblem(400, "INVALID_INPUT").errors()).isEqualTo(errors);
    }

    @Test
    void aRepeatUnderTheSameKeyMovesOnce() {
        var container = given.registered();
        var body = to(container, given.site(null), "2026-11-24T08:00:00Z");
        var once = yard.with("Idempotency-Key", Given.serial());
        var first = once.post("/api/movements", body).expect(201);

        tables.unchangedBy(() -> assertThat(once.post("/api/movements", body).expect(201).json())
                .isEqualTo(first.json()));
    }

    @Test
    void movementsAreListedByPages() {
        var container = given.registered();
        var depot = given.site(null);
        for (int day = 10; day < 15; day++) {
            given.moved(container, depot, "2026-11-" + day + "T08:00:00Z");
        }
        var first = yard.get("/api/containers/" + container + "/movements?size=3").expect(200);
        var second = yard.get("/api/containers/" + container + "/movements?size=3&cursor=" + first.text("/next"))
                .expect(200);
        assertThat(first.at("/items")).hasSize(3);
        assertThat(second.at("/items").findValuesAsString("occurredAt")).containsExactly("2026-11-11T08:00:00Z",
                "2026-11-10T08:00:00Z");
        assertThat(second.at("/next").isMissingNode()).isTrue();
    }
}
