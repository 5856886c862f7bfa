package org.collarbook.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

@RegisterTest
class ExtinguishersTests {

    private static final String NOBODY = "00000000-0000-7000-8000-000000000000";

    private final Api api;
    private final Api.Session yard;
    private final Given given;
    private final Tables tables;
    private final TestClock clock;

    ExtinguishersTests(Api api, Given given, Tables tables, TestClock clock) {
        this.api = api;
        this.yard = api.as(Role.YARD);
        this.given = given;
        this.tables = tables;
        this.clock = clock;
    }

    private static Map<String, @Nullable Object> described() {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("label", "north gate");
        body.put("type", "DRY_CHEMICAL_STORED_PRESSURE");
        body.put("ratingBC", 40);
        body.put("manufactured", "2022-05");
        return body;
    }

    private static Map<String, @Nullable Object> done(@Nullable String month, @Nullable String method) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("month", month);
        body.put("method", method);
        body.put("by", "M. Holt");
        return body;
    }

    private String at(UUID site) {
        return "/api/sites/" + site + "/extinguishers";
    }

    @Test
    void oneIsRecordedWorkedOnAndRemoved() {
        var path = at(given.site(given.customer()));
        var added = yard.post(path, described()).expect(201);
        assertThat(added.header("Location")).isEqualTo(path);
        assertThat(added.text("/manufactured")).isEqualTo("2022-05");
        var records = path + "/" + added.id() + "/records";

        yard.post(records, done("2026-11", "EXTINGUISHER_INSPECTED")).expect(201);
        yard.post(records, done("2026-05", "EXTINGUISHER_MAINTAINED")).expect(201);
        var list = yard.get(path).expect(200);
        assertThat(list.at("/items")).hasSize(1);
        assertThat(list.at("/items/0/records").findValuesAsString("month")).containsExactly("2026-05", "2026-11");
        assertThat(list.text("/items/0/records/0/by")).isEqualTo("M. Holt");
        assertThat(list.text("/items/0/records/0/recordedAt")).isEqualTo("2026-11-25T12:00:00Z");
        tables.unchangedBy(() -> yard.post(records, done("2026-11", "EXTINGUISHER_INSPECTED"))
                .expectProblem(409, "ALREADY_RECORDED"));

        yard.delete(path + "/" + added.id()).expect(204);
        assertThat(yard.get(path).at("/items")).isEmpty();
        var gone = yard.get(path + "?removed=true").expect(200);
        assertThat(gone.text("/items/0/removedAt")).isEqualTo("2026-11-25T12:00:00Z");
        assertThat(gone.at("/items/0/records")).as("its history stays").hasSize(2);
        tables.unchangedBy(() -> {
            yard.post(records, done("2026-10", "EXTINGUISHER_INSPECTED")).expectProblem(409, "EXTINGUISHER_REMOVED");
            yard.delete(path + "/" + added.id()).expect(204);
        });
    }

    @Test
    void aLabelIsInUseOnceAtASiteUntilItsBearerIsGone() {
        var path = at(given.site(null));
        var first = yard.post(path, described()).expect(201);
        tables.unchangedBy(() -> yard.post(path, described()).expectProblem(409, "LABEL_TAKEN"));
        yard.post(at(given.site(null)), described()).expect(201);
        yard.delete(path + "/" + first.id()).expect(204);
        yard.post(path, described()).expect(201);
        assertThat(yard.get(path + "?removed=true").at("/items")).hasSize(2);
    }

    @Test
    void whatIsNotKnownStaysUnknown() {
        var added = yard.post(at(given.site(null)), Map.of("label", "shed")).expect(201);
        for (var field : List.of("/type", "/ratingBC", "/manufactured", "/removedAt")) {
            assertThat(added.at(field).isMissingNode() || added.at(field).isNull()).as(field).isTrue();
        }
    }

    static Stream<Arguments> wrong() {
        return Stream.of(row("label", null, "MISSING"), row("label", "l".repeat(41), "INVALID_TEXT"),
                row("type", "BUCKET", "UNKNOWN_WORD"), row("ratingBC", 0, "OUT_OF_RANGE"),
                row("ratingBC", -40, "OUT_OF_RANGE"), row("ratingBC", 1001, "OUT_OF_RANGE"),
                row("ratingBC", "forty", "WRONG_TYPE"), row("manufactured", "2026-12", "IN_THE_FUTURE"),
                row("manufactured", "5-22", "INVALID_MONTH"), row("manufactured", "1899-12", "INVALID_MONTH"),
                row("rating", 40, "UNKNOWN_FIELD"));
    }

    private static Arguments row(String field, @Nullable Object value, String code) {
        return Arguments.of(field, value, code);
    }

    @ParameterizedTest
    @MethodSource("wrong")
    void aWrongExtinguisherIsRefusedByFieldAndCode(String field, @Nullable Object value, String code) {
        var path = at(given.site(null));
        var body = described();
        body.put(field, value);
        tables.unchangedBy(() -> {
            var refused = yard.post(path, body).expectProblem(400, "INVALID_INPUT");
            assertThat(refused.errors()).isEqualTo(Map.of("/" + field, code));
            assertThat(refused.text("/errors/0/accepted")).isNotBlank();
            if (value != null && value.toString().length() < 40) {
                assertThat(refused.body()).contains(field.equals("rating") ? field : value.toString());
            }
        });
    }

    static Stream<Arguments> wrongRecords() {
        return Stream.of(row("month", null, "MISSING"), row("month", "2026-12", "IN_THE_FUTURE"),
                row("month", "2022-04", "BEFORE_MANUFACTURE"), row("month", "2026-13", "INVALID_MONTH"),
                row("method", null, "MISSING"), row("method", "VOLUMETRIC_EXPANSION", "UNKNOWN_WORD"),
                row("method", "POLISHED", "UNKNOWN_WORD"), row("by", " ", "MISSING"));
    }

    @ParameterizedTest
    @MethodSource("wrongRecords")
    void aWrongRecordIsRefusedByFieldAndCode(String field, @Nullable Object value, String code) {
        var path = at(given.site(null));
        var records = path + "/" + yard.post(path, described()).id() + "/records";
        var body = done("2022-05", "EXTINGUISHER_MAINTAINED");
        body.put(field, value);
        tables.unchangedBy(() -> {
            var refused = yard.post(records, body).expectProblem(400, "INVALID_INPUT");
            assertThat(refused.errors()).isEqualTo(Map.of("/" + field, code));
            assertThat(refused.text("/errors/0/accepted")).isNotBlank();
        });
    }

    /** At noon in UTC on the last of November it is December on Kiritimati, fourteen hours ahead. */
    @Test
    void theMonthIsThatOfTheSite() {
        var east = Given.depot();
        east.put("zone", "Pacific/Kiritimati");
        var kiritimati = UUID.fromString(api.as(Role.CLERK).post("/api/sites", east).expect(201).id());
        clock.set(LocalDate.of(2026, 11, 30));
        var body = described();
        body.put("manufactured", "2026-12");
        yard.post(at(kiritimati), body).expect(201);
        assertThat(yard.post(at(given.site(null)), body).expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("/manufactured", "IN_THE_FUTURE"));
    }

    @Test
    void unknownPlacesAreNotFound() {
        var site = given.site(null);
        var added = yard.post(at(site), described()).expect(201);
        var elsewhere = at(given.site(null)) + "/" + added.id();
        tables.unchangedBy(() -> {
            yard.get("/api/sites/" + NOBODY + "/extinguishers").expectProblem(404, "NOT_FOUND");
            yard.post("/api/sites/" + NOBODY + "/extinguishers", described()).expectProblem(404, "NOT_FOUND");
            yard.post(at(site) + "/" + NOBODY + "/records", done("2026-11", "EXTINGUISHER_INSPECTED"))
                    .expectProblem(404, "NOT_FOUND");
            yard.post(elsewhere + "/records", done("2026-11", "EXTINGUISHER_INSPECTED"))
                    .expectProblem(404, "NOT_FOUND");
            yard.delete(elsewhere).expectProblem(404, "NOT_FOUND");
        });
    }

    @Test
    void aRepeatUnderTheSameKeyRecordsOnce() {
        var path = at(given.site(null));
        var once = yard.with("Idempotency-Key", Given.serial());
        var first = once.post(path, described()).expect(201);
        var again = yard.with("Idempotency-Key", Given.serial());
        var records = path + "/" + first.id() + "/records";
        var recorded = again.post(records, done("2026-11", "EXTINGUISHER_INSPECTED")).expect(201);
        tables.unchangedBy(() -> {
            assertThat(once.post(path, described()).expect(201).json()).isEqualTo(first.json());
            assertThat(again.post(records, done("2026-11", "EXTINGUISHER_INSPECTED")).expect(201).json())
                    .isEqualTo(recorded.json());
            again.post(records, done("2026-10", "EXTINGUISHER_INSPECTED"))
                    .expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
        });
    }

    @Test
    void theyAreListedByPages() {
        var path = at(given.site(null));
        for (var label : List.of("a", "b", "c")) {
            yard.post(path, Map.of("label", label)).expect(201);
        }
        var first = yard.get(path + "?size=2").expect(200);
        var second = yard.get(path + "?size=2&cursor=" + first.text("/next")).expect(200);
        assertThat(first.at("/items").findValuesAsString("label")).containsExactly("a", "b");
        assertThat(second.at("/items").findValuesAsString("label")).containsExactly("c");
    }
}
