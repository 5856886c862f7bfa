package org.collarbook.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A key from its issue to its end. */
@RegisterTest
class KeysTests {

    private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

    private final Api api;
    private final Given given;
    private final TestClock clock;
    private final JdbcClient jdbc;

    KeysTests(Api api, Given given, TestClock clock, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    private Api.Session administrator() {
        return api.as(Role.ADMINISTRATOR);
    }

    private boolean opens(String key) {
        return api.withKey(key).get("/api/rules/coverage").status() == 200;
    }

    @Test
    void isShownOnceKeptHashedAndWorksUntilRevoked() {
        var issued = administrator().post("/api/keys", Map.of("name", "dock 2", "roles", List.of("filler")))
                .expect(201);
        var key = issued.text("/key");
        // 32 bytes in base64url without padding (RFC 4648, section 5) are 43 characters
        assertThat(key).matches("cb_[A-Za-z0-9_-]{43}");
        assertThat(opens(key)).isTrue();
        var row = jdbc.sql("select k::text from api_key k where id = ?").param(UUID.fromString(issued.id()))
                .query(String.class).single();
        assertThat(row).doesNotContain(key, key.substring(3)).contains(key.substring(0, 9));
        administrator().delete("/api/keys/" + issued.id()).expect(204);
        api.withKey(key).get("/api/containers").expectProblem(401, "KEY_REQUIRED");
    }

    @Test
    void isListedByPagesWithItsUse() {
        var issued = administrator().post("/api/keys", Map.of("name", "dock 3", "roles", List.of("filler")))
                .expect(201);
        assertThat(listed(issued.id()).containsKey("lastUsedAt")).isFalse();
        clock.set(NOON.plusSeconds(90));
        opens(issued.text("/key"));
        assertThat(listed(issued.id())).containsEntry("lastUsedAt", "2026-11-25T12:01:30Z")
                .containsEntry("prefix", issued.text("/key").substring(0, 9)).doesNotContainKey("key");
    }

    private Map<String, Object> listed(String id) {
        var ids = new ArrayList<String>();
        Map<String, Object> found = Map.of();
        var next = "";
        do {
            var page = administrator().get("/api/keys?size=7&cursor=" + next).expect(200);
            for (var item : page.at("/items")) {
                ids.add(item.at("/id").asString());
                if (item.at("/id").asString().equals(id)) {
                    found = item.properties().stream().collect(Collectors.toMap(Map.Entry::getKey,
                            member -> member.getValue().asString("")));
                }
            }
            next = page.json().path("next").asString("");
        } while (!next.isEmpty());
        assertThat(ids).doesNotHaveDuplicates().contains(id);
        return found;
    }

    @Test
    void endsAtItsTime() {
        var key = administrator().post("/api/keys", Map.of("name", "a day", "roles", List.of("clerk"), "expiresAt",
                "2026-11-26T12:00:00Z")).expect(201).text("/key");
        clock.set(Instant.parse("2026-11-26T11:59:59Z"));
        assertThat(opens(key)).isTrue();
        clock.set(Instant.parse("2026-11-26T12:00:00Z"));
        assertThat(opens(key)).isFalse();
    }

    @Test
    void isReplacedByOneThatOpensTheSameWhileBothGoOnForTheOverlap() {
        var customer = given.customer();
        var site = given.site(customer);
        var old = administrator().post("/api/keys", Map.of("name", "portal", "roles", List.of("portal"), "customerId",
                customer, "sites", List.of(site), "expiresAt", "2026-12-05T12:00:00Z")).expect(201);
        clock.set(NOON.plusSeconds(3600));
        var path = "/api/keys/" + old.id() + "/rotation";
        var fresh = administrator().post(path, Map.of("overlapHours", 2)).expect(201);
        assertThat(List.of(opens(old.text("/key")), opens(fresh.text("/key")))).containsExactly(true, true);
        assertThat(listed(fresh.id())).containsEntry("customerId", customer.toString())
                .containsEntry("expiresAt", "2026-12-05T13:00:00Z");
        assertThat(listed(old.id())).containsEntry("replacedBy", fresh.id());
        assertThat(administrator().post(path, Map.of()).expectProblem(409, "KEY_REPLACED").text("/replacedBy"))
                .isEqualTo(fresh.id());
        clock.set(NOON.plusSeconds(3 * 3600));
        assertThat(List.of(opens(old.text("/key")), opens(fresh.text("/key")))).containsExactly(false, true);
        administrator().delete("/api/keys/" + fresh.id()).expect(204);
        administrator().post("/api/keys/" + fresh.id() + "/rotation", Map.of()).expectProblem(409, "KEY_ENDED");
        administrator().post("/api/keys/" + UUID.randomUUID() + "/rotation", Map.of()).expectProblem(404, "NOT_FOUND");
        administrator().post(path, Map.of("overlapHours", 721)).expectProblem(400, "INVALID_INPUT");
    }

    @Test
    void everythingWrongWithARequestIsToldAtOnce() {
        assertThat(administrator().post("/api/keys", Map.of("name", " ", "roles", List.of("king"), "expiresAt",
                "2020-01-01T00:00:00Z")).expectProblem(400, "INVALID_INPUT").errors()).containsEntry("/name", "MISSING")
                .containsEntry("/roles", "UNKNOWN_ROLE").containsEntry("/expiresAt", "OUT_OF_RANGE");
    }

    @Test
    void aPortalKeyNeedsItsCustomerAndStandsAlone() {
        var customer = given.customer();
        refused(Map.of("name", "x", "roles", List.of("portal")), "/roles", "NOT_ALLOWED");
        refused(Map.of("name", "x", "roles", List.of("portal", "clerk"), "customerId", customer), "/roles",
                "NOT_ALLOWED");
        refused(Map.of("name", "x", "roles", List.of("clerk"), "customerId", customer), "/roles", "NOT_ALLOWED");
    }

    @Test
    void isConfinedOnlyToWhatExistsAndIsTheCustomers() {
        var customer = given.customer();
        var another = given.site(given.customer());
        refused(portal(UUID.randomUUID(), List.of()), "/customerId", "UNKNOWN_CUSTOMER");
        refused(portal(customer, List.of(another)), "/sites", "UNKNOWN_SITE");
        refused(portal(customer, List.of(given.site(customer), UUID.randomUUID())), "/sites", "UNKNOWN_SITE");
        refused(Map.of("name", "x", "roles", List.of("portal"), "customerId", customer, "sites", List.of()), "/sites",
                "NOT_ALLOWED");
        refused(Map.of("name", "x", "roles", List.of("clerk"), "sites", List.of(another)), "/sites", "NOT_ALLOWED");
    }

    private static Map<String, Object> portal(UUID customer, List<UUID> sites) {
        return sites.isEmpty()
                ? Map.of("name", "x", "roles", List.of("portal"), "customerId", customer)
                : Map.of("name", "x", "roles", List.of("portal"), "customerId", customer, "sites", sites);
    }

    private void refused(Map<String, Object> body, String pointer, String code) {
        assertThat(administrator().post("/api/keys", body).expectProblem(400, "INVALID_INPUT").errors())
                .containsEntry(pointer, code);
    }
}
