package org.collarbook.compliance.fillcheck;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@RegisterTest
class FillCheckTests {

    private final Api api;
    private final Given given;

    FillCheckTests(Api api, Given given) {
        this.api = api;
        this.given = given;
    }

    private String serialOf(Map<String, @Nullable Object> body) {
        var id = given.registered(body);
        given.moved(id, given.site(given.customer()), "2026-11-20T09:00:00Z");
        return String.valueOf(body.get("serial"));
    }

    private static Map<String, @Nullable Object> inDate() {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        return body;
    }

    private Answer check(String query) {
        return api.as(Role.FILLER).get("/api/fill-check?" + query);
    }

    private static List<String> codes(Answer answer, String list) {
        var codes = new ArrayList<String>();
        answer.at(list).forEach(reason -> codes.add(reason.at("/code").asString()));
        return codes;
    }

    /** 47.6 lb of water times 42 % is 19.99 lb: 49 CFR 173.304a, specific gravity .504 to .510. */
    @Test
    void saysYesWithTheMostByWeight() {
        var answer = check("serial=" + serialOf(inDate()) + "&specificGravity=0.508").expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isTrue();
        assertThat(answer.text("/status")).isEqualTo("IN_DATE");
        assertThat(answer.text("/due")).isEqualTo("2032-06");
        assertThat(answer.at("/most/netLb").decimalValue()).isEqualByComparingTo("19.99");
        assertThat(answer.at("/most/grossLb").decimalValue()).isEqualByComparingTo("36.99");
        assertThat(answer.text("/caution")).contains("sees no dent");
        assertThat(answer.header("Cache-Control")).contains("no-store");
    }

    /** The filling density table of 49 CFR 173.304a ends at .634: a heavier liquid, or a lighter one, may not go in. */
    @ParameterizedTest
    @ValueSource(strings = {"0.9", "0.2"})
    void aLiquidOutsideTheTableMayNotGoIn(String gravity) {
        var answer = check("serial=" + serialOf(inDate()) + "&specificGravity=" + gravity).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).isFalse();
        assertThat(codes(answer, "/refusals")).containsExactly("SPECIFIC_GRAVITY_OUT_OF_TABLE");
    }

    /** Common practice, no source: the trade calls the 33.5 lb forklift cylinder an "8 gallon" one. */
    @Test
    void aForkliftCylinderHoldsAboutEightGallons() {
        var body = inDate();
        body.put("waterCapacity", "79.8 lb");
        body.put("use", "INDUSTRIAL_TRUCK");
        var answer = check("serial=" + serialOf(body) + "&specificGravity=0.508").expect(200);
        assertThat(answer.text("/container/size")).isEqualTo("33.5 lb");
        assertThat(answer.at("/most/netLb").decimalValue()).isEqualByComparingTo("33.51");
        assertThat(answer.at("/most/gallonsAt60F").asDouble()).isBetween(7.5, 8.0);
    }

    private String product(String lading, double gravity) {
        var code = "P" + Given.serial();
        api.as(Role.CLERK).post("/api/products", Map.of("code", code, "lading", lading, "specificGravity", gravity,
                "declaredBy", "the plant manager", "declaredOn", "2026-11-20")).expect(201);
        return code;
    }

    @Test
    void theGravityOfAProductIsItsDeclarers() {
        var serial = serialOf(inDate());
        var answer = check("serial=" + serial + "&product=" + product("LPG", 0.508)).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isTrue();
        assertThat(answer.at("/most/netLb").decimalValue()).isEqualByComparingTo("19.99");
        assertThat(answer.text("/liquid/declaredBy")).isEqualTo("the plant manager");
        assertThat(answer.text("/liquid/declaredOn")).isEqualTo("2026-11-20");
        check("serial=" + serial + "&product=" + product("PROPANE", 0.504)).expect(200);
        assertThat(check("serial=" + serial + "&product=NOBODY").expectProblem(400, "INVALID_INPUT").errors())
                .containsEntry("product", "UNKNOWN_PRODUCT");
        assertThat(check("serial=" + serial + "&specificGravity=0.508&product=" + product("LPG", 0.508))
                .expectProblem(400, "INVALID_INPUT").errors()).containsEntry("specificGravity", "TOO_MANY");
    }

    @ParameterizedTest
    @CsvSource({"LPG, LPG, true", "LPG, PROPANE, true", "PROPANE, PROPANE, true", "PROPANE, LPG, false",
            "LPG, BUTANE, false", "LPG, ANHYDROUS_AMMONIA, false"})
    void aProductGoesWhereItIsServed(String service, String lading, boolean may) {
        var body = inDate();
        body.put("service", Map.of("lading", service, "exclusive", true, "corrosionFree", true));
        var answer = check("serial=" + serialOf(body) + "&product=" + product(lading, 0.508)).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isEqualTo(may);
        assertThat(codes(answer, "/refusals").contains("PRODUCT_NOT_OF_SERVICE")).isEqualTo(!may);
    }

    /** No gravity, no maximum and no yes; nor with one that no table holds. */
    @ParameterizedTest
    @CsvSource({"'', MISSING_SPECIFIC_GRAVITY", "&specificGravity=0.7, SPECIFIC_GRAVITY_OUT_OF_TABLE"})
    void withoutAMaximumThereIsNoYes(String gravity, String code) {
        var answer = check("serial=" + serialOf(inDate()) + gravity).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).isFalse();
        assertThat(codes(answer, "/refusals")).containsExactly(code);
        assertThat(answer.at("/most").isMissingNode()).isTrue();
        assertThat(answer.at("/gauge").isMissingNode()).isTrue();
    }

    /** 47.6 lb is 5.7155 gallons; 80 % of them 4.5; 42 % of the weight at gravity .508 is 4.7 gallons at 60 °F. */
    @Test
    void theGaugeIsAnotherCheckThanTheWeight() {
        var answer = check("serial=" + serialOf(inDate()) + "&specificGravity=0.508&liquidTemperatureF=40").expect(200);
        assertThat(answer.at("/gauge/percentFull").asInt()).isEqualTo(80);
        assertThat(answer.at("/gauge/gallons").decimalValue()).isEqualByComparingTo("4.5");
        assertThat(answer.text("/gauge/basis")).isEqualTo("COMMON_PRACTICE");
        assertThat(answer.text("/gauge/note")).contains("another check");
        assertThat(answer.at("/most/gallonsAt60F").decimalValue()).isEqualByComparingTo("4.7");
        assertThat(answer.at("/most/gallonsAtTemperature").decimalValue()).isEqualByComparingTo("4.5");
        var hot = check("serial=" + serialOf(inDate()) + "&specificGravity=0.508&liquidTemperatureF=140").expect(200);
        assertThat(hot.at("/most/gallonsAtTemperature").isMissingNode()).isTrue();
        assertThat(codes(hot, "/reasons")).contains("VOLUME_NOT_CORRECTED");
    }

    /** 29 CFR 1910.110(b)(19)(v): 100 gallons above ground, gravity 0.510: 79.8 gallons at 40 °F; 42/0.510 at 60 °F. */
    @ParameterizedTest
    @ValueSource(strings = {"", "ABOVEGROUND", "UNDERGROUND"})
    void theWorkedExampleOfTheRegulation(String installation) {
        var tank = inDate();
        tank.put("kind", "STATIONARY_TANK");
        tank.put("specification", "ASME");
        tank.put("waterCapacity", "100 gal");
        tank.put("installation", installation.isEmpty() ? null : installation);
        tank.put("servicePressure", "250 psig");
        var answer = check("serial=" + serialOf(tank) + "&specificGravity=0.510&liquidTemperatureF=40").expect(200);
        assertThat(answer.at("/most/percentOfWaterCapacity").asInt()).as(answer.body()).isEqualTo(42);
        assertThat(answer.at("/most/gallonsAtTemperature").decimalValue()).isEqualByComparingTo("79.8");
        // 82.35, told rounded down; the literature rounds to 82.4
        assertThat(answer.at("/most/gallonsAt60F").decimalValue()).isEqualByComparingTo("82.3");
    }

    /** 49 CFR 178.65: DOT 39 is not refillable, so no weight stands beside the refusal. */
    @Test
    void whatIsNeverRefilledHasNoMaximum() {
        var body = inDate();
        body.put("specification", "DOT-39");
        var answer = check("serial=" + serialOf(body) + "&specificGravity=0.508").expect(200);
        assertThat(codes(answer, "/refusals")).contains("NOT_REFILLABLE");
        assertThat(answer.at("/most").isMissingNode()).isTrue();
        assertThat(answer.at("/gauge").isMissingNode()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"specificGravity, MISSING_SPECIFIC_GRAVITY", "waterCapacity, MISSING_WATER_CAPACITY",
            "tare, MISSING_TARE"})
    void givesNoMaximumThatItCannotKnow(String missing, String code) {
        var body = inDate();
        body.remove(missing);
        var answer = check("serial=" + serialOf(body)
                + (missing.equals("specificGravity") ? "" : "&specificGravity=0.508")).expect(200);
        assertThat(answer.at("/most/grossLb").isMissingNode()).isTrue();
        assertThat(codes(answer, "/reasons")).contains(code);
    }

    @ParameterizedTest
    @CsvSource({"coated, MISSING_COATED", "marksLegible, MISSING_MARKS_LEGIBLE", "owned, MISSING_OWNER_CONSENT",
            "collarRead, MISSING_REQUALIFICATIONS", "service, MISSING_LADING", "manufactured, MISSING_MANUFACTURED"})
    void whatIsNotKnownIsNo(String missing, String code) {
        var body = inDate();
        body.remove(missing);
        var answer = check("serial=" + serialOf(body)).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).isFalse();
        assertThat(codes(answer, "/refusals")).contains(code);
    }

    @Test
    void anOverdueCylinderIsNoWithItsCitation() {
        var answer = check("serial=" + serialOf(Given.cylinder())).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).isFalse();
        assertThat(answer.text("/status")).isEqualTo("OVERDUE");
        assertThat(codes(answer, "/refusals")).contains("OVERDUE");
        assertThat(answer.body()).contains("180.20");
    }

    @Test
    void severalMatchesAreAConflictThatTellsThemApart() {
        var first = inDate();
        first.put("maker", "QX");
        var serial = serialOf(first);
        var second = inDate();
        second.put("serial", serial);
        second.put("maker", "ZK");
        serialOf(second);
        var answer = check("serial=" + serial).expectProblem(409, "MORE_THAN_ONE");
        assertThat(answer.at("/candidates")).extracting(one -> one.at("/maker").asString())
                .containsExactlyInAnyOrder("QX", "ZK");
        check("serial=" + serial + "&maker=ZK").expect(200);
    }

    @Test
    void byTagOrByStampAsRead() {
        var body = inDate();
        body.put("tag", "TAG-" + Given.serial());
        var serial = serialOf(body);
        check("tag=" + body.get("tag")).expect(200);
        check("serial=" + serial.toLowerCase(java.util.Locale.ROOT) + "&specification=4ba240").expect(200);
    }

    @Test
    void anUnknownContainerIsDoNotFill() {
        var answer = check("serial=NOBODY-" + UUID.randomUUID().toString().substring(0, 8))
                .expectProblem(404, "NOT_FOUND");
        assertThat(answer.text("/detail")).startsWith("Do not fill");
        assertThat(answer.header("Cache-Control")).contains("no-store");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "tag=a&serial=b", "serial=x&specification=DOT-9ZZ", "serial=x&specificGravity=heavy",
            "serial=x&specificGravity=-1",
            "serial=x&specificGravity=1e-999999999", "serial=x&specificGravity=1.2", "serial=x&specificGravity=0.50811",
            "serial=x&liquidTemperatureF=151", "serial=x&liquidTemperatureF=-61", "serial=x&liquidTemperatureF=60.01",
            "serial=x&liquidTemperatureF=1e999999999", "serial=x&liquidTemperatureF=warm"})
    void badQuestionsAreRefused(String query) {
        check(query).expectProblem(400, "INVALID_INPUT");
    }

    @Test
    void aSerialOfTenThousandCharactersIsRefused() {
        // longer than the server takes in a request line, and longer than a serial may be
        check("serial=" + "9".repeat(5000)).expectProblem(400, "INVALID_INPUT");
        assertThat(check("serial=" + "9".repeat(10_000)).status()).isEqualTo(400);
    }
}
