package org.collarbook.compliance.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A fact that is recorded late makes a fill one that was not allowed: it is flagged, and stays. */
@RegisterTest
class FlaggedFillsTests {

    private static final String FILLED = "2026-11-18T11:00:00Z";

    private final Api api;
    private final Life life;
    private final TestClock clock;
    private final JdbcClient owner;

    FlaggedFillsTests(Api api, Given given, TestClock clock, Flyway flyway) {
        this.api = api;
        this.life = new Life(api, given);
        this.clock = clock;
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
    }

    private void day(String day) {
        clock.set(Instant.parse(day + "T12:00:00Z"));
    }

    /** Filled last week, lawfully by all that was known. */
    private UUID filledLastWeek() {
        day("2026-11-09");
        var id = life.begins();
        day("2026-11-18");
        life.filled(id, FILLED);
        day("2026-11-25");
        assertThat(fills(id).at("/items/0/flagged").asBoolean()).isFalse();
        return id;
    }

    private Answer fills(UUID container) {
        return api.as(Role.FILLER).get("/api/containers/" + container + "/fills").expect(200);
    }

    private List<String> latest(UUID container) {
        var codes = new ArrayList<String>();
        fills(container).at("/items/0/flags/0/reasons").forEach(reason -> codes.add(reason.path("code").asString()));
        return codes;
    }

    private int flags(UUID container) {
        return fills(container).at("/items/0/flags").size();
    }

    private void assertWhole(UUID container) {
        var answer = api.as(Role.CLERK).get("/api/audit/verification?container=" + container).expect(200);
        assertThat(answer.at("/whole").asBoolean()).as(answer.body()).isTrue();
    }

    @Test
    void aHoldThatHadOccurredBeforeFlagsTheFillAndItsLiftDoesNotClearIt() {
        var id = filledLastWeek();
        life.held(id, "VALVE_DEFECT", "2026-11-18T11:00:01Z");
        assertThat(flags(id)).as("it occurred after the fill").isZero();
        var hold = life.held(id, "DENTED", "2026-11-17T09:00:00Z");
        var fills = fills(id);
        assertThat(fills.at("/items")).hasSize(1);
        assertThat(fills.at("/items/0/flagged").asBoolean()).isTrue();
        assertThat(latest(id)).containsExactly("ON_HOLD");
        assertThat(fills.text("/items/0/flags/0/reasons/0/citation/section")).isEqualTo("180.205(d)");
        life.held(id, "LOST", "2026-11-16T09:00:00Z");
        assertThat(flags(id)).as("said already").isEqualTo(1);
        assertThat(owner.sql("select count(*) from hold where id = cast(? as uuid)").param(hold).query(Long.class)
                .single()).isEqualTo(1);
        assertWhole(id);
        assertThat(api.as(Role.CLERK).get("/api/containers/" + id + "/history").expect(200).body())
                .contains("\"kind\":\"FILL_FLAGGED\"");
        owner.sql("update fill_flag set reasons = '[]' where container_id = ?").param(id).update();
        assertThat(api.as(Role.CLERK).get("/api/audit/verification?container=" + id).expect(200).text("/broken/0/kind"))
                .isEqualTo("FILL_FLAGGED");
    }

    @Test
    void aHoldThatHadBeenLiftedByThenDoesNotCount() {
        day("2026-11-09");
        var id = life.begins();
        var hold = life.held(id, "VALVE_DEFECT", "2026-11-08T09:00:00Z");
        day("2026-11-10");
        life.lifted(hold);
        day("2026-11-18");
        life.filled(id, FILLED);
        assertThat(flags(id)).isZero();
        // told today, of a day on which it was held
        day("2026-11-25");
        life.filled(id, "2026-11-09T11:00:00Z");
        var late = fills(id);
        assertThat(late.at("/items/0/flagged").asBoolean()).as("the later one").isFalse();
        assertThat(late.text("/items/1/flags/0/reasons/0/code")).isEqualTo("ON_HOLD");
        assertWhole(id);
    }

    /** 49 CFR 180.209(e): the twelve years from 2014-06 were over. */
    @Test
    void aTestThatIsTakenBackMakesTheFillOverdueAndOneInItsPlaceClearsIt() {
        day("2026-05-21");
        var id = life.begins(Given.cylinder(), "6-14");
        var rin = life.facility();
        var record = life.requalified(id, Life.visual(rin, "2026-05-20", "SATISFACTORY"));
        day("2026-11-18");
        life.filled(id, FILLED);
        day("2026-11-25");
        life.corrected(record, null);
        assertThat(latest(id)).containsExactly("OVERDUE");
        assertThat(fills(id).text("/items/0/flags/0/reasons/0/citation/section")).startsWith("180.209");
        life.requalified(id, Life.visual(rin, "2026-11-20", "SATISFACTORY"));
        assertThat(flags(id)).as("a test after the fill makes nothing lawful").isEqualTo(1);
        life.requalified(id, Life.visual(rin, "2026-05-20", "SATISFACTORY"));
        var fills = fills(id);
        assertThat(fills.at("/items/0/flagged").asBoolean()).isFalse();
        assertThat(fills.at("/items/0/flags")).hasSize(2);
        assertThat(fills.at("/items/0/flags/0/reasons")).isEmpty();
        assertThat(api.as(Role.CLERK).get("/api/containers/" + id + "/history").expect(200).body())
                .contains("\"kind\":\"FILL_FLAGGED\"", "\"kind\":\"FILL_CLEARED\"");
        assertWhole(id);
    }

    @Test
    void aCondemnationDatedBeforeFlagsAndOneDatedAfterDoesNot() {
        var rin = life.facility();
        var before = filledLastWeek();
        life.requalified(before, Life.condemned(rin, "2026-11-16"));
        assertThat(latest(before)).contains("CONDEMNED");
        var after = filledLastWeek();
        life.requalified(after, Life.condemned(rin, "2026-11-20"));
        assertThat(flags(after)).isZero();
    }

    /** 49 CFR 173.304a(d)(1): 42 % of 40 lb of water are 16.8 lb. */
    @Test
    void aCorrectionOfTheMarksFlagsAndAnotherClears() {
        day("2026-11-09");
        var body = Given.cylinder();
        var id = life.begins(body, "6-20");
        day("2026-11-18");
        life.filled(id, FILLED);
        day("2026-11-25");
        corrected(id, body, "waterCapacity", "40.0 lb");
        assertThat(latest(id)).containsExactly("OVER_LIMIT");
        corrected(id, body, "waterCapacity", "47.6 lb");
        assertThat(latest(id)).isEmpty();
        assertThat(flags(id)).isEqualTo(2);
    }

    private void corrected(UUID id, Map<String, @Nullable Object> body, String field, String value) {
        var read = api.as(Role.CLERK).get("/api/containers/" + id).expect(200);
        body.put(field, value);
        body.put("reason", "misread");
        api.as(Role.CLERK).ifMatch(read).put("/api/containers/" + id, body).expect(200);
    }

    /** The hold that it places says nothing of the fill before; what it says of itself is not said again. */
    @Test
    void anObservedOverfillIsNotFlaggedForWhatItSays() {
        var id = life.begins();
        api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills",
                Map.of("containerId", id, "filledAt", FILLED, "specificGravity", 0.508, "netAfterLb", 25, "lookedAt",
                        true, "observedOverfill", true))
                .expect(201);
        assertThat(flags(id)).isZero();
        life.held(id, "DENTED", "2026-11-17T09:00:00Z");
        assertThat(latest(id)).containsExactly("ON_HOLD");
    }
}
