package org.collarbook.compliance.transport;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 49 CFR 173.315(j) in the 2015 edition: at most 5 %; up to 500 gal one way to the owner; under 1,042 lb filled. */
@RegisterTest
class TransportTests {

    private final Api.Session yard;
    private final Given given;
    private final Tables tables;

    TransportTests(Api api, Given given, Tables tables) {
        this.yard = api.as(Role.YARD);
        this.given = given;
        this.tables = tables;
    }

    private UUID tank(String waterCapacity) {
        var body = Given.cylinder();
        body.put("kind", "STATIONARY_TANK");
        body.put("specification", "ASME");
        body.put("manufactured", "2010-05");
        body.put("waterCapacity", waterCapacity);
        body.put("servicePressure", 250);
        body.remove("tare");
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-01T09:00:00Z");
        return id;
    }

    private static String path(UUID id) {
        return "/api/containers/" + id + "/transport-records";
    }

    private static Map<String, @Nullable Object> move(String percentFull, String purpose) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("movedOn", "2026-11-24");
        body.put("percentFull", new java.math.BigDecimal(percentFull));
        body.put("purpose", purpose);
        body.put("from", "12 Hill Road");
        body.put("to", "North depot");
        body.put("carrier", "Invented Haulage, truck 4");
        body.put("inspectedOn", "2026-11-24");
        body.put("inspectedBy", "M. Holt");
        body.put("leakFree", true);
        body.put("secured", true);
        return body;
    }

    @ParameterizedTest
    @CsvSource({"1000 gal, 5, TO_SCRAP, true", "1000 gal, 5.01, TO_OWNER, false", "500 gal, 50, TO_OWNER, true",
            "500 gal, 50, DELIVERY, false", "120 gal, 80, DELIVERY, true"})
    void aMoveIsJudgedBySizeContentAndPurpose(String capacity, String percentFull, String purpose, boolean allowed) {
        var id = tank(capacity);
        if (!allowed) {
            tables.unchangedBy(() -> assertThat(yard.post(path(id), move(percentFull, purpose))
                    .expectProblem(409, "MOVE_REFUSED").body()).contains("NOT_TO_BE_MOVED", "173.315(j)"));
            return;
        }
        var recorded = yard.post(path(id), move(percentFull, purpose)).expect(201);
        assertThat(recorded.text("/keepUntil")).isEqualTo("2028-11-24");
        assertThat(recorded.text("/kept/section")).isEqualTo("173.315(j)(2)");
        assertThat(recorded.at("/refusedFor")).isEmpty();
        assertThat(yard.get(path(id)).at("/items/0")).isEqualTo(recorded.json());
    }

    @Test
    void whatHappenedIsAFactWithWhatSpeaksAgainstIt() {
        var id = tank("1000 gal");
        var body = move("60", "TO_OWNER");
        body.put("leakFree", false);
        body.put("happened", true);
        var recorded = yard.post(path(id), body).expect(201);
        assertThat(recorded.at("/refusedFor").toString()).contains("NOT_TO_BE_MOVED", "LEAK_FOUND");
        assertThat(yard.get("/api/containers/" + id + "/history").expect(200).body()).contains("TRANSPORTED");
        tables.unchangedBy(() -> yard.post(path(id), body).expectProblem(409, "ALREADY_RECORDED"));
    }

    @Test
    void aTankOnHoldStaysAndALeakingOneToo() {
        var id = tank("120 gal");
        var leaking = move("5", "TO_OWNER");
        leaking.put("leakFree", false);
        tables.unchangedBy(() -> assertThat(yard.post(path(id), leaking).expectProblem(409, "MOVE_REFUSED").body())
                .contains("LEAK_FOUND"));
        yard.post("/api/containers/" + id + "/holds", Map.of("reason", "LEAKING")).expect(201);
        tables.unchangedBy(() -> assertThat(yard.post(path(id), move("5", "TO_OWNER"))
                .expectProblem(409, "MOVE_REFUSED").body()).contains("ON_HOLD"));
    }

    @ParameterizedTest
    @CsvSource({"movedOn, , MISSING", "movedOn, 2026-11-27, OUT_OF_RANGE", "inspectedOn, 2026-11-25, OUT_OF_RANGE",
            "percentFull, 101, OUT_OF_RANGE", "percentFull, , MISSING", "purpose, FUN, UNKNOWN_WORD",
            "purpose, , MISSING", "from, , MISSING", "to, , MISSING", "carrier, , MISSING", "inspectedBy, , MISSING",
            "leakFree, , MISSING", "secured, , MISSING", "secured, false, NOT_SECURED"})
    void aWrongRecordIsRefused(String field, @Nullable String value, String code) {
        var id = tank("120 gal");
        var body = move("5", "TO_OWNER");
        body.put(field, value == null ? null : field.equals("secured") ? (Object) Boolean.valueOf(value) : value);
        if (field.equals("percentFull") && value != null) {
            body.put(field, Integer.valueOf(value));
        }
        tables.unchangedBy(() -> assertThat(yard.post(path(id), body).expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("/" + field, code)));
    }

    @Test
    void itIsForStationaryTanksThatAreKnown() {
        var id = given.registered();
        tables.unchangedBy(() -> yard.post(path(id), move("5", "TO_OWNER")).expectProblem(409, "NOT_FOR_THIS_KIND"));
        tables.unchangedBy(() -> yard.post(path(UUID.randomUUID()), move("5", "TO_OWNER"))
                .expectProblem(404, "NOT_FOUND"));
        yard.get(path(UUID.randomUUID())).expectProblem(404, "NOT_FOUND");
    }
}
