package org.collarbook.compliance.fillcheck;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** No yes from a capacity that the specification cannot have, nor for a liquid whose pressure nobody knows. */
@RegisterTest
class DoubtedLimitTests {

    private final Api api;
    private final Given given;

    DoubtedLimitTests(Api api, Given given) {
        this.api = api;
        this.given = given;
    }

    private static List<String> codes(Answer answer, String list) {
        var codes = new ArrayList<String>();
        answer.at(list).forEach(reason -> codes.add(reason.at("/code").asString()));
        return codes;
    }

    private Answer check(Map<String, @Nullable Object> body, String gravity) {
        body.put("manufactured", "6-20");
        var id = given.registered(body);
        given.moved(id, given.site(given.customer()), "2026-11-20T09:00:00Z");
        return api.as(Role.FILLER).get("/api/fill-check?serial=" + body.get("serial") + "&specificGravity=" + gravity)
                .expect(200);
    }

    /** 49 CFR 178.51(a): at most 1,000 lb of water, nominal; 173.301(a)(8): 5/4 of 240 psig at 131 °F. */
    @ParameterizedTest
    @CsvSource({"4760 lb, 0.508, CAPACITY_NOT_OF_SPECIFICATION", "1000 gal, 0.508, CAPACITY_NOT_OF_SPECIFICATION",
            "47.6 lb, 0.40, PRESSURE_NOT_KNOWN_FOR_GRAVITY", "47.6 lb, 0.271, PRESSURE_NOT_KNOWN_FOR_GRAVITY"})
    void noLimitAndNoYes(String capacity, String gravity, String code) {
        var body = Given.cylinder();
        body.put("waterCapacity", capacity);
        var answer = check(body, gravity);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isFalse();
        assertThat(codes(answer, "/refusals")).containsExactly(code);
        assertThat(codes(answer, "/reasons")).containsOnlyOnce(code);
        assertThat(answer.at("/most").isMissingNode()).isTrue();
        assertThat(answer.text("/refusals/0/citation/section")).isNotBlank();
    }

    /** 47.6 lb told as gallons: common practice, no source, a cylinder of 17 lb holds some 47 lb of water. */
    @ParameterizedTest
    @CsvSource({"47.6 gal", "476 lb", "47.6 kg", "8.5 lb"})
    void noLimitOfACapacityThatCannotBelongToTheTare(String capacity) {
        var body = Given.cylinder();
        body.put("waterCapacity", capacity);
        var answer = check(body, "0.508");
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isFalse();
        assertThat(codes(answer, "/refusals")).containsExactly("CAPACITY_CONTRADICTS_TARE");
        assertThat(answer.at("/most").isMissingNode()).isTrue();
    }

    /** The same marks, told without registering anything. */
    @Test
    void nothingIsAllowedOfACapacityToldOnce() {
        var container = Map.of("kind", "CYLINDER", "specification", "DOT-4BA240", "manufactured", "2020-06",
                "waterCapacity", "1000 gal");
        var answer = api.as(Role.FILLER).post("/api/assessments",
                Map.of("asOf", "2026-11-25", "jurisdiction", "US", "container", container)).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isFalse();
        assertThat(answer.at("/permissions/mayFill/reasons").toString()).contains("CAPACITY_NOT_OF_SPECIFICATION");
    }
}
