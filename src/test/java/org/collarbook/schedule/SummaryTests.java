package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import tools.jackson.databind.JsonNode;

@RegisterTest
class SummaryTests {

    private final Api api;
    private final Given given;
    private final TestClock clock;

    SummaryTests(Api api, Given given, TestClock clock) {
        this.api = api;
        this.given = given;
        this.clock = clock;
    }

    private UUID site(UUID customer, String zone) {
        var body = Given.depot();
        body.put("kind", "CUSTOMER");
        body.put("customerId", customer);
        body.put("zone", zone);
        return UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
    }

    private UUID seeded() {
        var random = new Random(20261129);
        var customer = given.customer();
        var sites = List.of(site(customer, "Pacific/Kiritimati"), site(customer, "America/Chicago"),
                site(customer, "America/Chicago"));
        for (int i = 0; i < 40; i++) {
            var body = Given.cylinder();
            // twelve years from each side of this month, and some due months often
            var made = YearMonth.of(2014, 11).plusMonths(random.nextInt(9) - 4);
            body.put("manufactured", made.toString());
            body.put("waterCapacity", random.nextBoolean() ? "47.6 lb" : "239 lb");
            given.moved(given.registered(body), sites.get(random.nextInt(sites.size())), "2026-11-20T09:00:00Z");
        }
        return customer;
    }

    private List<JsonNode> lines(String query) {
        var lines = new ArrayList<JsonNode>();
        var next = "";
        do {
            var page = api.as(Role.CLERK).get("/api/schedule?size=7&" + query + "&cursor=" + next).expect(200);
            page.at("/items").forEach(lines::add);
            next = page.json().path("next").asString("");
        } while (!next.isEmpty());
        return lines;
    }

    private static Map<String, Long> counted(List<JsonNode> lines, String... keys) {
        var counts = new TreeMap<String, Long>();
        for (var line : lines) {
            var key = new StringBuilder();
            for (var name : keys) {
                key.append(line.path(name).asString("")).append(' ');
            }
            counts.merge(key + line.path("status").asString(), 1L, Long::sum);
        }
        return counts;
    }

    private static Map<String, Long> told(JsonNode groups, String... keys) {
        var counts = new TreeMap<String, Long>();
        for (var group : groups) {
            var key = new StringBuilder();
            for (var name : keys) {
                key.append(group.path(name).asString("")).append(' ');
            }
            long sum = 0;
            for (var status : group.path("statuses").propertyNames()) {
                long count = group.path("statuses").path(status).asLong();
                counts.put(key + status, count);
                sum += count;
            }
            assertThat(group.path("count").asLong()).isEqualTo(sum);
        }
        return counts;
    }

    /** The last day of November is over where the day begins first, so the same month has two words. */
    @Test
    void countsWhatTheListHas() {
        var customer = seeded();
        clock.set(Instant.parse("2026-11-30T12:00:00Z"));
        for (var also : new String[]{"", "&from=2026-09&to=2026-12", "&containerSize=100%20lb", "&status=OVERDUE"}) {
            var query = "customer=" + customer + also;
            var lines = lines(query);
            assertThat(lines).isNotEmpty();
            var summary = api.as(Role.CLERK).get("/api/schedule/summary?by=site&" + query).expect(200);
            assertThat(summary.at("/count").asInt()).isEqualTo(lines.size());
            assertThat(told(summary.at("/months"), "due")).isEqualTo(counted(lines, "due"));
            assertThat(told(summary.at("/sites"), "site")).isEqualTo(counted(lines, "site"));
            assertThat(told(summary.at("/cells"), "due", "site")).isEqualTo(counted(lines, "due", "site"));
        }
        var november = api.as(Role.CLERK)
                .get("/api/schedule/summary?from=2026-11&to=2026-11&customer=" + customer).expect(200);
        assertThat(november.at("/months/0/statuses").propertyNames()).contains("OVERDUE", "DUE_THIS_MONTH");
        assertThat(november.json().has("cells")).isFalse();
    }

    @Test
    void nothingIsCountedAsNothing() {
        var summary = api.as(Role.CLERK).get("/api/schedule/summary?customer=" + given.customer()).expect(200);
        assertThat(summary.at("/count").asInt()).isZero();
        assertThat(summary.at("/months")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"by=month, by, UNKNOWN_WORD", "cursor=, cursor, UNKNOWN_PARAMETER", "kind=BOTTLE, kind, UNKNOWN_WORD"})
    void refuses(String query, String pointer, String code) {
        assertThat(
                api.as(Role.CLERK).get("/api/schedule/summary?" + query).expectProblem(400, "INVALID_INPUT").errors())
                .containsExactly(Map.entry(pointer, code));
    }
}
