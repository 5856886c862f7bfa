package org.collarbook.compliance.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What was recorded after a moment was not known at it, and what happened after a day had not happened on it. */
@RegisterTest
class ReplayOfFactsTests {

    private final Api api;
    private final Given given;
    private final Life life;
    private final TestClock clock;
    private final JdbcClient owner;

    ReplayOfFactsTests(Api api, Given given, TestClock clock, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.life = new Life(api, given);
        this.clock = clock;
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
    }

    private void day(String day) {
        clock.set(Instant.parse(day + "T12:00:00Z"));
    }

    /** At the end of that day's work. */
    private Answer asked(UUID container, String on, String knownOn) {
        return api.as(Role.CLERK).get("/api/containers/" + container + "/assessment?on=" + on + "&knownAt=" + knownOn
                + "T18:00:00Z").expect(200);
    }

    private String status(UUID container, String on, String knownOn) {
        return asked(container, on, knownOn).text("/status");
    }

    @Test
    void aHoldCountsFromWhenItIsKnownAndUntilTheDayOfItsLift() {
        day("2026-11-09");
        var id = life.begins();
        day("2026-11-12");
        var hold = life.held(id, "VALVE_DEFECT", "2026-11-11T15:00:00Z");
        day("2026-11-20");
        life.lifted(hold);
        day("2026-11-25");
        assertThat(status(id, "2026-11-11", "2026-11-11")).as("nobody knew of it").isEqualTo("IN_DATE");
        assertThat(status(id, "2026-11-10", "2026-11-13")).as("it had not happened").isEqualTo("IN_DATE");
        assertThat(status(id, "2026-11-11", "2026-11-13")).isEqualTo("ON_HOLD");
        assertThat(status(id, "2026-11-20", "2026-11-19")).as("nobody knew of the lift").isEqualTo("ON_HOLD");
        assertThat(status(id, "2026-11-19", "2026-11-21")).as("not lifted yet").isEqualTo("ON_HOLD");
        assertThat(status(id, "2026-11-20", "2026-11-21")).isEqualTo("IN_DATE");
    }

    /** 49 CFR 180.209(e) and (g): twelve years from 2014-06, five from an external visual inspection. */
    @Test
    void aCorrectionWasNotKnownBeforeItWasMade() {
        day("2026-11-09");
        var id = life.begins(Given.cylinder(), "6-14");
        day("2026-11-12");
        var record = life.requalified(id, Life.visual(life.facility(), "2026-11-11", "SATISFACTORY"));
        day("2026-11-20");
        life.corrected(record, null);
        day("2026-11-25");
        assertThat(asked(id, "2026-11-13", "2026-11-10").text("/requirements/0/due")).isEqualTo("2026-06");
        assertThat(asked(id, "2026-11-13", "2026-11-13").text("/requirements/0/due")).isEqualTo("2031-11");
        assertThat(status(id, "2026-11-10", "2026-11-13")).as("before it was done").isEqualTo("OVERDUE");
        assertThat(asked(id, "2026-11-13", "2026-11-21").text("/requirements/0/due")).isEqualTo("2026-06");
    }

    /** A lift by a requalification that was taken back later was a lift until then. */
    @Test
    void aLiftThatWasTakenBackCountedUntilThen() {
        day("2026-11-09");
        var id = life.begins();
        life.held(id, "COLLAR_OR_FOOT_RING_MISSING", "2026-11-08T15:00:00Z");
        day("2026-11-12");
        var record = life.requalified(id, Life.visual(life.facility(), "2026-11-11", "SATISFACTORY"));
        day("2026-11-20");
        life.corrected(record, null);
        day("2026-11-25");
        assertThat(status(id, "2026-11-12", "2026-11-10")).isEqualTo("ON_HOLD");
        assertThat(status(id, "2026-11-12", "2026-11-13")).isEqualTo("IN_DATE");
        assertThat(status(id, "2026-11-12", "2026-11-21")).isEqualTo("ON_HOLD");
    }

    @Test
    void whatWasFilledInTimeIsUsedUpUntilItIsKnownToBeEmpty() {
        day("2026-05-20");
        var id = life.begins(Given.cylinder(), "6-14");
        life.filled(id, "2026-05-20T11:00:00Z");
        day("2026-11-14");
        life.emptied(id, "2026-11-12T15:00:00Z");
        day("2026-11-25");
        assertThat(status(id, "2026-11-13", "2026-11-13")).as("nobody knew").isEqualTo("USE_UP");
        assertThat(status(id, "2026-11-11", "2026-11-15")).as("not empty yet").isEqualTo("USE_UP");
        assertThat(status(id, "2026-11-13", "2026-11-15")).isEqualTo("OVERDUE");
        assertThat(status(id, "2026-11-13", "2026-05-20")).as("filled, as was known then").isEqualTo("USE_UP");
    }

    @Test
    void aSiteIsTheVersionThatWasThenKnown() {
        day("2026-11-09");
        var body = Given.depot();
        var site = api.as(Role.CLERK).post("/api/sites", body).expect(201).id();
        var id = given.registered();
        given.moved(id, UUID.fromString(site), "2026-11-08T09:00:00Z");
        day("2026-11-15");
        var read = api.as(Role.CLERK).get("/api/sites/" + site).expect(200);
        body.put("jurisdiction", "CA");
        body.put("zone", "America/Toronto");
        api.as(Role.CLERK).ifMatch(read).put("/api/sites/" + site, body).expect(200);
        day("2026-11-25");
        assertThat(jurisdictions(asked(id, "2026-11-10", "2026-11-10"))).contains("US").doesNotContain("CA");
        assertThat(jurisdictions(asked(id, "2026-11-10", "2026-11-16"))).contains("CA");
    }

    private static String jurisdictions(Answer answer) {
        var all = new StringBuilder();
        answer.at("/requirements").forEach(one -> all.append(one.path("jurisdiction").asString()).append(' '));
        return all.toString();
    }

    /** What an installation had switched on by name is part of how it answered. */
    @Test
    void whatWasSwitchedOnThenAnswersAsItDid() {
        day("2026-05-09");
        var id = life.begins();
        day("2026-11-25");
        var rules = api.as(Role.CLERK).get("/api/containers/" + id + "/assessment").expect(200);
        for (var version : new String[]{"4 with COMMON_PRACTICE, SECONDARY", "3 with SECONDARY"}) {
            loaded(rules.text("/ruleBook/hash"), version, () -> {
                var then = asked(id, "2026-05-10", "2026-05-10");
                assertThat(then.text("/replayed/evaluatorThen")).isEqualTo(version);
                assertThat(then.text("/ruleBook/engineVersion")).isEqualTo("4" + version.substring(1));
                assertThat(then.text("/ruleBook/hash")).isEqualTo(rules.text("/ruleBook/hash"));
                assertThat(then.at("/replayed/sameEvaluator").asBoolean()).isEqualTo(version.startsWith("4"));
                assertThat(then.body()).isNotEqualTo(asked(id, "2026-05-10", "2026-05-11").body());
            });
        }
    }

    /** As if the book had been loaded so at the beginning of that day, and as it is now at its end. */
    private void loaded(String hash, String engineVersion, Runnable then) {
        owner.sql("""
                insert into rule_book (hash, engine_version, content)
                select hash, ?, content from rule_book where hash = ? limit 1""").params(engineVersion, hash).update();
        owner.sql("""
                insert into rule_book_load (rule_book_id, loaded_at)
                select id, case when engine_version = ? then timestamptz '2026-05-10T00:00:00Z'
                    else '2026-05-10T20:00:00Z' end
                from rule_book where hash = ? and engine_version in (?, '4')""")
                .params(engineVersion, hash, engineVersion).update();
        try {
            then.run();
        } finally {
            owner.sql("delete from rule_book_load where loaded_at < '2026-05-11'").update();
            owner.sql("delete from rule_book where engine_version = ?").param(engineVersion).update();
        }
    }
}
