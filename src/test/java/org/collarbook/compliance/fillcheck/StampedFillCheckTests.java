package org.collarbook.compliance.fillcheck;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.inspection.Requalifications;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Rin;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The stamp as read, held against the register: what it contradicts is told, and never a yes. */
@RegisterTest
class StampedFillCheckTests {

    private static final Caller CALLER = new Caller(UUID.randomUUID(), "test", Set.of(Role.CLERK),
            CustomerScope.EVERYONE);

    private final Api api;
    private final Given given;
    private final Requalifications requalifications;
    private final Tables tables;

    StampedFillCheckTests(Api api, Given given, Requalifications requalifications, Tables tables) {
        this.api = api;
        this.given = given;
        this.requalifications = requalifications;
        this.tables = tables;
    }

    private static Map<String, @Nullable Object> inDate() {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        body.put("serial", Given.serial().replace("-", ""));
        return body;
    }

    private UUID standing(Map<String, @Nullable Object> body) {
        var id = given.registered(body);
        given.moved(id, given.site(given.customer()), "2026-11-20T09:00:00Z");
        return id;
    }

    private static List<String> lines(Map<String, @Nullable Object> body) {
        return new ArrayList<>(List.of("DOT-4BA240", "S/N " + body.get("serial"), "6-20", "WC 47.6 LB", "TW 17.0"));
    }

    private Answer check(List<String> lines) {
        return api.as(Role.FILLER).post("/api/fill-check", Map.of("lines", lines, "specificGravity", 0.508));
    }

    private static List<String> codes(Answer answer, String list) {
        var codes = new ArrayList<String>();
        answer.at(list).forEach(reason -> codes.add(reason.at("/code").asString()));
        return codes;
    }

    @Test
    void aStampThatAgreesIsAnsweredLikeTheQuery() {
        var body = inDate();
        standing(body);
        tables.unchangedBy(() -> {
            var answer = check(lines(body)).expect(200);
            assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isTrue();
            assertThat(answer.at("/most/netLb").decimalValue()).isEqualByComparingTo("19.99");
            assertThat(answer.text("/due")).isEqualTo("2032-06");
            assertThat(answer.at("/stamp")).hasSize(5).allMatch(line -> line.at("/says").asString().equals("AGREES"));
            assertThat(answer.header("Cache-Control")).contains("no-store");
        });
    }

    /** One line is changed to say something else than the register does. */
    @ParameterizedTest
    @CsvSource({"0, DOT-4BW240, SPECIFICATION", "2, 6-19, MANUFACTURED", "3, WC 95.2 LB, WATER_CAPACITY",
            "4, TW 18.5, TARE"})
    void aLineThatContradictsRefuses(int line, String says, String kind) {
        var body = inDate();
        standing(body);
        var lines = lines(body);
        lines.set(line, says);
        var answer = check(lines).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isFalse();
        assertThat(codes(answer, "/refusals")).containsExactly("MARKS_DISPUTED");
        assertThat(answer.text("/stamp/" + line + "/says")).isEqualTo("DISPUTED");
        assertThat(answer.text("/stamp/" + line + "/kind")).isEqualTo(kind);
        assertThat(answer.text("/refusals/0/text")).contains(says);
    }

    /** What the collar says of being out of service stands until the register knows of it, 49 CFR 180.205(i). */
    @ParameterizedTest
    @ValueSource(strings = {"CONDEMNED", "REJECTED", "DOT-4BA240XXXX"})
    void aCylinderStampedOutOfServiceIsNotFilled(String stamped) {
        var body = inDate();
        standing(body);
        var lines = lines(body);
        lines.add(stamped);
        var answer = check(lines).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isFalse();
        assertThat(codes(answer, "/refusals")).contains("MARKS_DISPUTED");
        assertThat(answer.text("/stamp/5/says")).isEqualTo("DISPUTED");
    }

    /** 17 lb is 7.711 kg and 47.6 lb of water is 21.6 L: rounded as stamped, no contradiction. */
    @Test
    void aStampInAnotherUnitIsNoContradiction() {
        var body = inDate();
        standing(body);
        var lines = lines(body);
        lines.set(3, "WC 21.6 L");
        lines.set(4, "TW 7.7 KG");
        assertThat(check(lines).expect(200).at("/mayFill").asBoolean()).isTrue();
    }

    /**
     * 49 CFR 180.209(g): an external visual lasts five years, so a mark of October 2021 that nobody recorded makes the
     * cylinder overdue, though the register has it in date until 2032.
     */
    @Test
    void aNewerMarkThatShortensTheDateRefuses() {
        var body = inDate();
        standing(body);
        var lines = lines(body);
        lines.add("10/B045/21 E");
        var answer = check(lines).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isFalse();
        assertThat(codes(answer, "/refusals")).containsOnly("MARKS_DISPUTED");
        assertThat(answer.text("/refusals/0/text")).contains("which is not recorded", "due month has passed");
        assertThat(answer.text("/stamp/5/says")).isEqualTo("NOT_RECORDED");
    }

    /** With the mark and without it the fill is allowed: told, and no refusal. */
    @Test
    void aNewerMarkThatChangesNothingIsTold() {
        var body = inDate();
        standing(body);
        var lines = lines(body);
        lines.add("10/B045/25 E");
        var answer = check(lines).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isTrue();
        assertThat(codes(answer, "/reasons")).contains("MARKS_NOT_RECORDED");
    }

    /** The collar does not make an overdue record good: the mark is to be recorded first. */
    @Test
    void aNewerMarkDoesNotLiftWhatTheRegisterRefuses() {
        var body = inDate();
        body.put("manufactured", "6-10");
        standing(body);
        var lines = lines(body);
        lines.set(2, "6-10");
        lines.add("10/B045/25 E");
        var answer = check(lines).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isFalse();
        assertThat(codes(answer, "/refusals")).contains("OVERDUE");
        assertThat(codes(answer, "/reasons")).contains("MARKS_NOT_RECORDED");
    }

    @Test
    void aRecordedMarkAgreesAndAnotherRequalifiersNumberDoesNot() {
        var body = inDate();
        var id = standing(body);
        requalifications.append(new RequalificationEntry(id, Requalification.passed(java.time.YearMonth.of(2025, 10),
                Method.EXTERNAL_VISUAL, new Rin("B045")), null, null), CALLER);
        var lines = lines(body);
        lines.add("10/B045/25 E");
        var agreed = check(lines).expect(200);
        assertThat(agreed.at("/mayFill").asBoolean()).as(agreed.body()).isTrue();
        assertThat(agreed.text("/stamp/5/says")).isEqualTo("AGREES");
        lines.set(5, "10/B046/25 E");
        var other = check(lines).expect(200);
        assertThat(other.at("/mayFill").asBoolean()).isFalse();
        assertThat(codes(other, "/refusals")).contains("MARKS_DISPUTED");
    }

    @Test
    void whatIsNotReadIsTold() {
        var body = inDate();
        standing(body);
        var lines = lines(body);
        lines.add("?? \ud800 ##");
        var answer = check(lines).expect(200);
        assertThat(codes(answer, "/reasons")).contains("MARKS_NOT_READ");
        assertThat(answer.text("/stamp/5/says")).isEqualTo("NOT_READ");
        assertThat(answer.text("/caution")).contains("Look at the container");
    }

    /** It may say that the container is overdue, or not to be filled: unknown is never fine. */
    @ParameterizedTest
    @ValueSource(strings = {"5-18 5-19E", "5-19.E", "E 5-19", "DO NOT FILL", "REJ", "NOT FOR PROPANE"})
    void whatIsNotReadRefuses(String line) {
        var body = inDate();
        standing(body);
        var lines = lines(body);
        assertThat(check(lines).expect(200).at("/mayFill").asBoolean()).isTrue();
        lines.add(line);
        var answer = check(lines).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).as(answer.body()).isFalse();
    }

    @Test
    void ofSeveralWithOneSerialTheStampTellsWhich() {
        var first = inDate();
        first.put("maker", "QX");
        standing(first);
        var second = new LinkedHashMap<>(first);
        second.put("maker", "ZK");
        standing(second);
        check(lines(first)).expectProblem(409, "MORE_THAN_ONE");
        var lines = lines(first);
        lines.add(2, "ZK");
        assertThat(check(lines).expect(200).text("/container/maker")).isEqualTo("ZK");
    }

    @Test
    void byTagTheSerialIsHeldAgainstIt() {
        var body = inDate();
        var tag = "TAG-" + Given.serial();
        body.put("tag", tag);
        standing(body);
        var lines = lines(body);
        lines.set(1, "S/N 424242");
        var answer = api.as(Role.FILLER).post("/api/fill-check",
                Map.of("lines", lines, "tag", tag, "specificGravity", 0.508)).expect(200);
        assertThat(answer.at("/mayFill").asBoolean()).isFalse();
        assertThat(answer.text("/stamp/1/says")).isEqualTo("DISPUTED");
    }

    @Test
    void withoutASerialOrInNoRegisterItIsDoNotFill() {
        assertThat(check(List.of("DOT-4BA240", "6-20")).expectProblem(400, "INVALID_INPUT").errors())
                .containsEntry("/lines", "NO_SERIAL_READ");
        assertThat(check(List.of("DOT-4BA240", "S/N NOBODY99")).expectProblem(404, "NOT_FOUND").text("/detail"))
                .startsWith("Do not fill");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"{}|/lines", "{\"lines\":[]}|/lines", "{\"lines\":[null]}|/lines/0",
            "{\"lines\":[\"S/N 1\"],\"product\":\"NOBODY\"}|/product",
            "{\"lines\":[\"S/N 1\"],\"specificGravity\":2}|/specificGravity",
            "{\"lines\":[\"S/N 1\"],\"liquidTemperatureF\":900}|/liquidTemperatureF"})
    void badQuestionsAreRefused(String question, String pointer) {
        assertThat(api.as(Role.FILLER).post("/api/fill-check", question).expectProblem(400, "INVALID_INPUT").errors())
                .containsKey(pointer);
    }
}
