package org.collarbook.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@RegisterTest
class ProductsTests {

    private final Api api;
    private final Tables tables;

    ProductsTests(Api api, Tables tables) {
        this.api = api;
        this.tables = tables;
    }

    private static Map<String, @Nullable Object> propane() {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("code", "HD5-" + Given.serial());
        body.put("lading", "propane");
        body.put("specificGravity", 0.508);
        body.put("declaredBy", "the plant manager");
        body.put("declaredOn", "2026-11-20");
        return body;
    }

    @Test
    void aProductIsDeclaredReadAndDeclaredAnew() {
        var clerk = api.as(Role.CLERK);
        var body = propane();
        var declared = clerk.post("/api/products", body).expect(201);
        var path = "/api/products/" + declared.id();
        assertThat(declared.text("/lading")).isEqualTo("PROPANE");
        assertThat(declared.header("Location")).isEqualTo(path);
        assertThat(api.as(Role.FILLER).get(path).expect(200).at("/specificGravity").decimalValue())
                .isEqualByComparingTo("0.508");
        body.put("specificGravity", 0.5062);
        clerk.put(path, body).expectProblem(428, "IF_MATCH_REQUIRED");
        var changed = clerk.ifMatch(declared).put(path, body).expect(200);
        assertThat(changed.at("/specificGravity").decimalValue()).isEqualByComparingTo("0.5062");
        clerk.ifMatch(declared).put(path, body).expectProblem(412, "STALE_VERSION");
        assertThat(clerk.get("/api/products?size=1000").expect(200).body()).contains(declared.id());
    }

    @Test
    void aCodeIsInUseOnce() {
        var clerk = api.as(Role.CLERK);
        var body = propane();
        clerk.post("/api/products", body).expect(201);
        var other = clerk.post("/api/products", propane()).expect(201);
        tables.unchangedBy(() -> {
            clerk.post("/api/products", body).expectProblem(409, "CODE_TAKEN");
            clerk.ifMatch(other).put("/api/products/" + other.id(), body).expectProblem(409, "CODE_TAKEN");
        });
    }

    @ParameterizedTest
    @CsvSource({"code, , MISSING", "lading, LP GAS, INVALID_LADING", "lading, , MISSING", "specificGravity, , MISSING",
            "specificGravity, 0, OUT_OF_RANGE", "specificGravity, 1, OUT_OF_RANGE",
            "specificGravity, -0.5, OUT_OF_RANGE",
            "specificGravity, 0.50812, OUT_OF_RANGE", "specificGravity, 508, OUT_OF_RANGE", "declaredBy, , MISSING",
            "declaredOn, , MISSING", "declaredOn, 2027-01-01, IN_THE_FUTURE", "declaredOn, 1900-01-01, OUT_OF_RANGE"})
    void whatCannotBeIsRefused(String field, @Nullable String value, String code) {
        var body = propane();
        body.put(field, value);
        tables.unchangedBy(() -> assertThat(api.as(Role.CLERK).post("/api/products", body)
                .expectProblem(400, "INVALID_INPUT").errors()).containsExactly(Map.entry("/" + field, code)));
    }

    @Test
    void onlyTheOfficeDeclares() {
        tables.unchangedBy(() -> api.as(Role.FILLER).post("/api/products", propane()).expectProblem(403, "FORBIDDEN"));
    }
}
