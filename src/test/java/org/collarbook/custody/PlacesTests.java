package org.collarbook.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.stream.Stream;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

@RegisterTest
class PlacesTests {

    private static final String NOBODY = "00000000-0000-7000-8000-000000000000";

    private final Api api;
    private final Api.Session clerk;
    private final Given given;
    private final Tables tables;

    PlacesTests(Api api, Given given, Tables tables) {
        this.api = api;
        this.clerk = api.as(Role.CLERK);
        this.given = given;
        this.tables = tables;
    }

    @Test
    void aCustomerIsOpenedReadAndRenamed() {
        var code = Given.serial();
        var opened = clerk.post("/api/customers", Map.of("code", code, "name", " Alder Grove Grain ")).expect(201);
        assertThat(opened.text("/name")).isEqualTo("Alder Grove Grain");
        var path = opened.header("Location");
        assertThat(clerk.get(path).expect(200).etag()).isEqualTo("\"0\"");

        var renamed = Map.of("code", code, "name", "Alder Grove Farms");
        tables.unchangedBy(() -> {
            clerk.put(path, renamed).expectProblem(428, "IF_MATCH_REQUIRED");
            clerk.with("If-Match", "\"1\"").put(path, renamed).expectProblem(412, "STALE_VERSION");
        });
        var after = clerk.ifMatch(opened).put(path, renamed).expect(200);
        assertThat(after.etag()).isEqualTo("\"1\"");
        assertThat(clerk.get(path).text("/name")).isEqualTo("Alder Grove Farms");
    }

    @Test
    void aCodeIsInUseOnce() {
        var body = Map.of("code", Given.serial(), "name", "First");
        clerk.post("/api/customers", body).expect(201);
        var site = Given.depot();
        clerk.post("/api/sites", site).expect(201);

        tables.unchangedBy(() -> {
            clerk.post("/api/customers", body).expectProblem(409, "CODE_TAKEN");
            clerk.post("/api/sites", site).expectProblem(409, "CODE_TAKEN");
        });
    }

    @Test
    void customersAreCheckedFieldByField() {
        tables.unchangedBy(() -> {
            assertThat(clerk.post("/api/customers", Map.of()).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/code", "MISSING", "/name", "MISSING"));
            assertThat(clerk.post("/api/customers", Map.of("code", "c".repeat(41), "name", "n\u0001"))
                    .expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/code", "INVALID_TEXT", "/name", "INVALID_TEXT"));
            clerk.get("/api/customers/" + NOBODY).expectProblem(404, "NOT_FOUND");
            api.as(Role.FILLER).post("/api/customers", Map.of("code", "x", "name", "x"))
                    .expectProblem(403, "FORBIDDEN");
        });
    }

    @Test
    void aSiteIsOpenedReadChangedAndListedByCustomer() {
        var customer = given.customer();
        var body = Given.depot();
        body.put("kind", "CUSTOMER");
        body.put("customerId", customer);
        body.put("latitude", 41.59);
        body.put("longitude", -93.62);
        body.put("address", "12 Mill Road");
        var opened = clerk.post("/api/sites", body).expect(201);
        assertThat(opened.text("/zone")).isEqualTo("America/Chicago");
        assertThat(opened.at("/latitude").doubleValue()).isEqualTo(41.59);

        body.put("zone", "America/Denver");
        body.remove("latitude");
        body.remove("longitude");
        var path = opened.header("Location");
        tables.unchangedBy(() -> clerk.put(path, body).expectProblem(428, "IF_MATCH_REQUIRED"));
        var changed = clerk.ifMatch(opened).put(path, body).expect(200);
        assertThat(changed.text("/zone")).isEqualTo("America/Denver");
        assertThat(changed.at("/latitude").isMissingNode()).isTrue();

        var list = clerk.get("/api/sites?customer=" + customer).expect(200);
        assertThat(list.at("/items")).hasSize(1);
        assertThat(list.text("/items/0/id")).isEqualTo(opened.id());
    }

    static Stream<Arguments> wrongSites() {
        return Stream.of(row("zone", null, "/zone", "MISSING"), row("zone", "Chicago", "/zone", "UNKNOWN_ZONE"),
                row("zone", "+06:00", "/zone", "UNKNOWN_ZONE"), row("jurisdiction", null, "/jurisdiction", "MISSING"),
                row("jurisdiction", "U", "/jurisdiction", "INVALID_JURISDICTION"),
                row("kind", null, "/kind", "MISSING"), row("kind", " ", "/kind", "MISSING"),
                row("kind", "SHED", "/kind", "UNKNOWN_WORD"),
                row("kind", "CUSTOMER", "/customerId", "MISSING"),
                row("customerId", NOBODY, "/customerId", "NOT_ALLOWED"),
                row("customerId", "me", "/customerId", "WRONG_TYPE"), row("latitude", 41, "/longitude", "MISSING"),
                row("longitude", -93, "/latitude", "MISSING"), row("code", " ", "/code", "MISSING"),
                row("name", "n".repeat(201), "/name", "INVALID_TEXT"),
                row("address", "a".repeat(401), "/address", "INVALID_TEXT"));
    }

    private static Arguments row(String field, @Nullable Object value, String pointer, String code) {
        return Arguments.of(field, value, pointer, code);
    }

    @ParameterizedTest
    @MethodSource("wrongSites")
    void aWrongSiteIsRefusedByFieldAndCode(String field, @Nullable Object value, String pointer, String code) {
        var body = Given.depot();
        body.put(field, value);

        tables.unchangedBy(() -> assertThat(clerk.post("/api/sites", body).expectProblem(400, "INVALID_INPUT")
                .errors()).isEqualTo(Map.of(pointer, code)));
    }

    @Test
    void coordinatesLieOnTheEarthAndCustomersExist() {
        var body = Given.depot();
        body.put("kind", "CUSTOMER");
        body.put("customerId", NOBODY);
        body.put("latitude", 90.1);
        body.put("longitude", -180.1);

        assertThat(clerk.post("/api/sites", body).expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("/customerId", "UNKNOWN_CUSTOMER", "/latitude", "OUT_OF_RANGE", "/longitude",
                        "OUT_OF_RANGE"));
    }

    @Test
    void customersAndSitesAreListedByPages() {
        given.customer();
        given.customer();
        given.site(null);
        given.site(null);
        for (var path : new String[]{"/api/customers", "/api/sites"}) {
            var first = clerk.get(path + "?size=1").expect(200);
            assertThat(first.at("/items")).hasSize(1);
            var second = clerk.get(path + "?size=1&cursor=" + first.text("/next")).expect(200);
            assertThat(second.text("/items/0/id")).isGreaterThan(first.text("/items/0/id"));
            clerk.get(path + "?cursor=x").expectProblem(400, "INVALID_INPUT");
        }
    }
}
