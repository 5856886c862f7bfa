package org.collarbook.registry;

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

/** What comes in wrong is answered by a problem that names field and code; nothing of it is stored. */
@RegisterTest
class BadInputTests {

    private final Api api;
    private final Api.Session clerk;
    private final Tables tables;

    BadInputTests(Api api, Tables tables) {
        this.api = api;
        this.clerk = api.as(Role.CLERK);
        this.tables = tables;
    }

    static Stream<Arguments> wrong() {
        return Stream.of(
                row("specification", "DOT-4QQ240", "UNKNOWN_SPECIFICATION"), row("specification", null, "MISSING"),
                row("specification", "DOT" + " ".repeat(5000) + "4BA", "UNKNOWN_SPECIFICATION"),
                row("kind", null, "MISSING"), row("kind", "BARREL", "UNKNOWN_KIND"),
                row("kind", "STATIONARY_TANK", "KIND_CONTRADICTS_SPECIFICATION"),
                row("serial", null, "MISSING"), row("serial", "", "MISSING"), row("serial", "   ", "MISSING"),
                row("serial", "9".repeat(41), "INVALID_SERIAL"), row("serial", "9".repeat(10_000), "INVALID_SERIAL"),
                row("serial", "A\u0000B", "INVALID_SERIAL"), row("serial", "A\nB", "INVALID_SERIAL"),
                row("serial", "AB\u200b77", "INVALID_SERIAL"), row("serial", "\uff21B77", "INVALID_SERIAL"),
                row("maker", "M\u00ad", "INVALID_MAKER"), row("tag", "T\u200b1", "INVALID_TAG"),
                row("serial", "9".repeat(79) + "\ud83d\ude00".repeat(20), "INVALID_SERIAL"),
                row("waterCapacity", "9".repeat(19) + "\ud83d\ude00 gal", "INVALID_WATER_CAPACITY"),
                row("tag", "x".repeat(60) + "9".repeat(19) + "\ud83d\ude00", "INVALID_TAG"),
                row("maker", "M".repeat(21), "INVALID_MAKER"), row("maker", "M\u0007", "INVALID_MAKER"),
                row("manufactured", "13-04", "INVALID_MONTH"), row("manufactured", "00-04", "INVALID_MONTH"),
                row("manufactured", "May 2004", "INVALID_MONTH"), row("manufactured", "12-2026", "IN_THE_FUTURE"),
                row("manufactured", "2027-01", "IN_THE_FUTURE"), row("manufactured", "1-27", "IN_THE_FUTURE"),
                row("manufactured", "5-1804", "INVALID_MONTH"),
                row("waterCapacity", "-47.6 lb", "INVALID_WATER_CAPACITY"),
                row("waterCapacity", "47.6", "INVALID_WATER_CAPACITY"),
                row("waterCapacity", "0 lb", "INVALID_WATER_CAPACITY"),
                row("waterCapacity", "47.6 stone", "INVALID_WATER_CAPACITY"),
                row("waterCapacity", "99999999999 gal", "INVALID_WATER_CAPACITY"),
                row("waterCapacity", "0.00001 lb", "INVALID_WATER_CAPACITY"),
                row("tare", "17", "INVALID_TARE"), row("tare", "-17 lb", "INVALID_TARE"),
                row("tare", "0 lb", "INVALID_TARE"), row("servicePressure", "0", "INVALID_SERVICE_PRESSURE"),
                row("servicePressure", "17 bar", "INVALID_SERVICE_PRESSURE"),
                row("servicePressure", 20_001, "INVALID_SERVICE_PRESSURE"),
                row("tag", "(8003)0952114112345532a", "INVALID_TAG"), row("tag", "(8003)09521141123454", "INVALID_TAG"),
                row("tag", "x".repeat(61), "INVALID_TAG"), row("steel", "SOFT", "UNKNOWN_WORD"),
                row("installation", "AFLOAT", "UNKNOWN_WORD"), row("reliefValve", "NONE", "UNKNOWN_WORD"),
                row("extendedPeriod", "P20Y", "UNKNOWN_WORD"), row("schemeDue", "2031-13", "WRONG_TYPE"),
                row("schemeDue", "2301-01", "OUT_OF_RANGE"), row("outOfServiceSince", "1812-01-01", "OUT_OF_RANGE"),
                row("outOfServiceSince", "2026-11-27", "IN_THE_FUTURE"),
                row("use", "BARBECUE", "UNKNOWN_WORD"),
                row("owner", "o".repeat(201), "INVALID_TEXT"), row("owner", "o\u0000", "INVALID_TEXT"),
                row("coated", "perhaps", "WRONG_TYPE"), row("reason", "why", "NOT_ALLOWED"),
                row("colour", "grey", "UNKNOWN_FIELD"));
    }

    private static Arguments row(String field, @Nullable Object value, String code) {
        return Arguments.of(field, value, code);
    }

    @ParameterizedTest
    @MethodSource("wrong")
    void isRefusedByFieldAndCode(String field, @Nullable Object value, String code) {
        var body = Given.cylinder();
        body.put(field, value);

        tables.unchangedBy(() -> {
            var refused = clerk.post("/api/containers", body).expectProblem(400, "INVALID_INPUT");
            assertThat(refused.errors()).isEqualTo(Map.of("/" + field, code));
            assertThat(refused.body().length()).as("the input is not echoed whole").isLessThan(1500);
        });
    }

    @Test
    void nestedFieldsAreNamedByTheirPath() {
        var body = Given.cylinder();
        body.put("service", Map.of("lading", "natural gas!"));
        body.put("permit", Map.of("intervalYears", 41, "number", ""));

        assertThat(clerk.post("/api/containers", body).expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("/service/lading", "INVALID_LADING", "/permit/intervalYears", "OUT_OF_RANGE"));
    }

    @Test
    void everythingWrongIsToldAtOnce() {
        tables.unchangedBy(() -> assertThat(clerk.post("/api/containers",
                Map.of("manufactured", "13-04", "waterCapacity", "47.6", "use", "?"))
                .expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("/kind", "MISSING", "/specification", "MISSING", "/serial", "MISSING",
                        "/manufactured", "INVALID_MONTH", "/waterCapacity", "INVALID_WATER_CAPACITY", "/use",
                        "UNKNOWN_WORD")));
    }

    @Test
    void bodiesThatAreNoJsonAreRefused() {
        tables.unchangedBy(() -> {
            clerk.post("/api/containers", "{\"kind\":").expectProblem(400, "INVALID_INPUT");
            clerk.post("/api/containers", "").expectProblem(400, "INVALID_INPUT");
            clerk.post("/api/containers", new byte[]{(byte) 0xff, (byte) 0xfe, 0}).expectProblem(400, "INVALID_INPUT");
            clerk.post("/api/containers", "[]").expectProblem(400, "INVALID_INPUT");
            clerk.post("/api/containers", "{\"serial\":\"\\ud800\",\"kind\":\"CYLINDER\",\"specification\":\"UN\"}")
                    .expectProblem(400, "INVALID_INPUT");
            clerk.with("Content-Type", "text/plain").post("/api/containers", "x").expect(415);
        });
    }

    @Test
    void aStaleVersionIsNotEchoedWhole() {
        var body = Given.cylinder();
        var created = clerk.post("/api/containers", body).expect(201);
        body.put("reason", "weighed");

        assertThat(clerk.with("If-Match", "\"" + "7".repeat(5000) + "\"").put("/api/containers/" + created.id(), body)
                .expectProblem(412, "STALE_VERSION").body().length()).isLessThan(600);
    }

    @Test
    void pagesAndCursorsAreChecked() {
        for (var query : new String[]{"size=0", "size=1001", "size=-1", "size=many", "cursor=zzz", "cursor=%00",
                "serial=", "tag=(8003)1", "serial=" + "9".repeat(3000)}) {
            clerk.get("/api/containers?" + query).expectProblem(400, "INVALID_INPUT");
        }
        clerk.get("/api/containers/not-an-id").expectProblem(400, "INVALID_INPUT");
    }

    @Test
    void noKeyOrAWrongOneOpensNothing() {
        tables.unchangedBy(() -> {
            api.anonymous().post("/api/containers", Given.cylinder()).expectProblem(401, "KEY_REQUIRED");
            api.withKey("cb_" + "A".repeat(43)).post("/api/containers", Given.cylinder())
                    .expectProblem(401, "KEY_REQUIRED");
            api.as(Role.FILLER).post("/api/containers", Given.cylinder()).expectProblem(403, "FORBIDDEN");
            api.as(Role.DISPATCHER).post("/api/containers", Given.cylinder()).expectProblem(403, "FORBIDDEN");
        });
    }
}
