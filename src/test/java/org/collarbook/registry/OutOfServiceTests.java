package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tanks out of service; 49 CFR 180.407(b)(3) asks a cargo tank for a pressure test after a year of it. */
@RegisterTest
class OutOfServiceTests {

    private final Api.Session yard;
    private final Given given;
    private final Tables tables;

    OutOfServiceTests(Api api, Given given, Tables tables) {
        this.yard = api.as(Role.YARD);
        this.given = given;
        this.tables = tables;
    }

    private static String path(UUID id) {
        return "/api/containers/" + id + "/out-of-service";
    }

    private UUID standing(Map<String, @Nullable Object> body) {
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-01T09:00:00Z");
        return id;
    }

    private Answer assessed(UUID id) {
        return yard.get("/api/containers/" + id + "/assessment").expect(200);
    }

    @Test
    void whileATankIsOutOfServiceNothingIsPutIn() {
        var id = standing(PartsTests.tank());
        assertThat(assessed(id).at("/mayFill").asBoolean()).isTrue();
        yard.post(path(id), Map.of("since", "2026-11-20", "reason", "customer moved out")).expect(201);
        var out = assessed(id);
        assertThat(out.at("/mayFill").asBoolean()).isFalse();
        assertThat(out.text("/status")).isEqualTo("ON_HOLD");
        assertThat(out.body()).contains("customer moved out");
        var shown = yard.get("/api/containers/" + id).expect(200);
        assertThat(shown.text("/outOfService/since")).isEqualTo("2026-11-20");
        tables.unchangedBy(() -> yard.post(path(id), Map.of("since", "2026-11-21", "reason", "again"))
                .expectProblem(409, "OUT_OF_SERVICE"));
        tables.unchangedBy(() -> yard.post(path(id) + "/return", Map.of("returnedOn", "2026-11-19"))
                .expectProblem(400, "INVALID_INPUT"));
        yard.post(path(id) + "/return", Map.of("returnedOn", "2026-11-25", "note", "looked over")).expect(201);
        assertThat(assessed(id).at("/mayFill").asBoolean()).isTrue();
        assertThat(yard.get("/api/containers/" + id).at("/outOfService").isMissingNode()).isTrue();
        assertThat(yard.get(path(id)).text("/items/0/returnedOn")).isEqualTo("2026-11-25");
        tables.unchangedBy(() -> yard.post(path(id) + "/return", Map.of("returnedOn", "2026-11-25"))
                .expectProblem(409, "NOT_OUT_OF_SERVICE"));
        assertThat(yard.get("/api/containers/" + id + "/history").expect(200).body())
                .contains("OUT_OF_SERVICE", "RETURNED_TO_SERVICE");
    }

    /** One day short of a year, and a year to the day. */
    @ParameterizedTest
    @CsvSource({"2025-11-21, false", "2025-11-20, true"})
    void aYearOutAsksACargoTankForATestAfterItsReturnToo(String since, boolean asked) {
        var body = PartsTests.tank();
        body.put("kind", "CARGO_TANK");
        body.put("specification", "MC-331");
        body.put("waterCapacity", "3000 gal");
        var id = standing(body);
        yard.post(path(id), Map.of("since", since, "reason", "spare")).expect(201);
        yard.post(path(id) + "/return", Map.of("returnedOn", "2026-11-20")).expect(201);
        assertThat(assessed(id).body().contains("\"code\":\"OUT_OF_SERVICE\"")).isEqualTo(asked);
    }

    @Test
    void aCylinderIsHeldInstead() {
        var id = given.registered();
        tables.unchangedBy(() -> yard.post(path(id), Map.of("since", "2026-11-20", "reason", "spare"))
                .expectProblem(409, "NOT_FOR_THIS_KIND"));
    }

    @ParameterizedTest
    @CsvSource({"2026-11-27, IN_THE_FUTURE", "1700-01-01, OUT_OF_RANGE", "2010-04-30, BEFORE_MANUFACTURE",
            ", MISSING"})
    void aWrongDayIsRefused(@Nullable String since, String code) {
        var id = given.registered(PartsTests.tank());
        var body = new java.util.HashMap<String, @Nullable Object>();
        body.put("since", since);
        body.put("reason", "spare");
        tables.unchangedBy(() -> assertThat(yard.post(path(id), body).expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("/since", code)));
    }
}
