package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Places of different jurisdictions claim a container: whose rules are to be asked is not known, so nothing is fine. */
@RegisterTest
class DisputedJurisdictionTests {

    private final Api api;
    private final Given given;
    private final TestClock clock;
    private final JdbcClient jdbc;

    private final UUID container;
    private final String canadian;

    DisputedJurisdictionTests(Api api, Given given, TestClock clock, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.clock = clock;
        this.jdbc = jdbc;
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        container = given.registered(body);
        given.moved(container, given.site(null), "2026-11-20T09:00:00Z");
        var site = Given.depot();
        site.put("jurisdiction", "CA-ON");
        canadian = api.as(Role.CLERK).post("/api/sites", site).expect(201).id();
    }

    private void seen(String site, String at) {
        api.as(Role.YARD).post("/api/sightings", Map.of("containerId", container, "site", site, "occurredAt", at))
                .expect(201);
    }

    private Answer assessed(String query) {
        return api.as(Role.FILLER).get("/api/containers/" + container + "/assessment" + query).expect(200);
    }

    private Answer check() {
        var serial = api.as(Role.FILLER).get("/api/containers/" + container).text("/serial");
        return api.as(Role.FILLER).get("/api/fill-check?specificGravity=0.508&serial=" + serial).expect(200);
    }

    private String stored() {
        return jdbc.sql("select standing from requirement where container_id = ? and decisive").param(container)
                .query(String.class).single();
    }

    @Test
    void noneOfThemIsSilentlyTaken() {
        assertThat(check().at("/mayFill").booleanValue()).isTrue();
        seen(canadian, "2026-11-21T09:00:00Z");
        var check = check();
        assertThat(check.at("/mayFill").booleanValue()).isFalse();
        assertThat(check.at("/refusals").findValuesAsString("code")).contains("MISSING_JURISDICTION");
        assertThat(check.at("/reasons").findValuesAsString("code")).contains("PLACE_DISPUTED");
        assertThat(assessed("").text("/status")).isEqualTo("UNDETERMINED");
        assertThat(stored()).isEqualTo("UNDETERMINED");
    }

    @Test
    void theAnswerFollowsTheDisputeAndReplaysAsItWasKnown() {
        clock.set(Instant.parse("2026-11-21T10:00:00Z"));
        seen(canadian, "2026-11-21T09:00:00Z");
        clock.set(Instant.parse("2026-11-25T12:00:00Z"));
        var place = jdbc.sql("select site_id from placement where container_id = ?").param(container)
                .query(UUID.class).single();
        seen(place.toString(), "2026-11-23T09:00:00Z");
        assertThat(stored()).isEqualTo("DUE");
        assertThat(assessed("").text("/status")).isEqualTo("IN_DATE");
        assertThat(assessed("?on=2026-11-25").text("/status")).isEqualTo("IN_DATE");
        // what happened by the end of the day asked about, wherever on earth, counts
        assertThat(assessed("?on=2026-11-19").text("/status")).isEqualTo("IN_DATE");
        assertThat(assessed("?on=2026-11-21").text("/status")).as("that day two claimed it")
                .isEqualTo("UNDETERMINED");
        assertThat(check().at("/mayFill").booleanValue()).isTrue();
    }

    @Test
    void aClaimingSiteThatTurnsOutToLieElsewhereCountsAtOnce() {
        var site = Given.depot();
        var clerk = api.as(Role.CLERK);
        var other = clerk.post("/api/sites", site).expect(201);
        seen(other.id(), "2026-11-21T09:00:00Z");
        assertThat(stored()).isEqualTo("DUE");
        site.put("jurisdiction", "CA-ON");
        clerk.ifMatch(clerk.get("/api/sites/" + other.id())).put("/api/sites/" + other.id(), site).expect(200);
        assertThat(stored()).isEqualTo("UNDETERMINED");
    }

    /** Told later, the fill is judged by its own moment. */
    @Test
    void aFillOfTheTimeOfTheDisputeIsNotAllowed() {
        seen(canadian, "2026-11-22T09:00:00Z");
        assertThat(filled("2026-11-21T09:00:00Z").text("/lines/0/outcome")).isEqualTo("RECORDED");
        var during = filled("2026-11-23T09:00:00Z");
        assertThat(during.text("/lines/0/outcome")).isEqualTo("RECORDED_NOT_ALLOWED");
        assertThat(during.at("/lines/0/reasons").findValuesAsString("code")).contains("MISSING_JURISDICTION");
    }

    private Answer filled(String at) {
        return api.as(Role.YARD).with("Idempotency-Key", Given.serial()).post("/api/scan-batches",
                Map.of("batchId", "B" + Given.serial(), "lines", java.util.List.of(Map.of("id", Given.serial(), "kind",
                        "FILL", "containerId", container, "occurredAt", at, "specificGravity", 0.508, "netAfterLb", 19,
                        "lookedAt", true))))
                .expect(201);
    }
}
