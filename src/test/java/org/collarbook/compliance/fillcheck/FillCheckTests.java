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
            "serial=x&specificGravity=1e-999999999", "serial=x&specificGravity=1.2"})
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
