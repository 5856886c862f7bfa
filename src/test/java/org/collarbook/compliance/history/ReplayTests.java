package org.collarbook.compliance.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The answer that the register would have given on a day, with what it knew at a moment and the rules it then held. */
@RegisterTest
class ReplayTests {

    private final Api api;
    private final Given given;
    private final JdbcClient owner;

    ReplayTests(Api api, Given given, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
    }

    private Answer asked(UUID container, String query) {
        return api.as(Role.CLERK).get("/api/containers/" + container + "/assessment" + query);
    }

    /** As if everything of it so far had been recorded so much earlier. */
    private void longAgo(UUID container, String interval) {
        for (var table : new String[]{"journal", "movement", "requalification", "fill"}) {
            owner.sql("update " + table + " set recorded_at = recorded_at - cast(? as interval) where container_id = ?")
                    .params(interval, container).update();
        }
    }

    private Instant recorded(UUID container) {
        return owner.sql("select max(recorded_at) from journal where container_id = ?").param(container)
                .query(OffsetDateTime.class).single().toInstant();
    }

    @Test
    void whatIsKnownNowIsTheAnswerOfToday() {
        var container = given.registered();
        given.moved(container, given.site(null), "2026-11-20T09:00:00Z");
        var now = asked(container, "").expect(200);
        var then = asked(container, "?on=" + now.text("/asOf")).expect(200);
        for (var field : new String[]{"/status", "/requirements", "/reasons", "/permissions", "/ruleBook"}) {
            assertThat(then.at(field)).as(field).isEqualTo(now.at(field));
        }
        assertThat(then.at("/replayed/sameEvaluator").asBoolean()).isTrue();
        assertThat(now.json().has("replayed")).isFalse();
    }

    /** A coat that was recorded later changes the period, 49 CFR 180.209(e), and not what was known before. */
    @Test
    void whatWasCorrectedLaterWasNotKnownBefore() {
        var body = Given.cylinder();
        body.put("coated", null);
        var container = given.registered(body);
        given.moved(container, given.site(null), "2026-11-20T09:00:00Z");
        longAgo(container, "10 days");
        var before = recorded(container);
        var read = api.as(Role.CLERK).get("/api/containers/" + container);
        body.put("coated", true);
        body.put("reason", "looked at");
        api.as(Role.CLERK).ifMatch(read).put("/api/containers/" + container, body).expect(200);
        assertThat(asked(container, "").expect(200).text("/requirements/0/due")).isEqualTo("2016-05");
        var then = asked(container, "?knownAt=" + before).expect(200);
        assertThat(then.text("/status")).isEqualTo("UNDETERMINED");
        assertThat(then.body()).contains("MISSING_COATED");
        assertThat(asked(container, "?knownAt=" + before.minusSeconds(60)).expectProblem(404, "NOT_FOUND").body())
                .contains("not registered by");
    }

    @Test
    void whatCannotBeAskedIsNamed() {
        var container = given.registered();
        assertThat(asked(container, "?on=yesterday&knownAt=2999-01-01T00:00:00Z").expectProblem(400, "INVALID_INPUT")
                .errors()).containsEntry("on", "INVALID_DATE").containsEntry("knownAt", "IN_THE_FUTURE");
        asked(container, "?knownAt=now").expectProblem(400, "INVALID_INPUT");
        asked(UUID.randomUUID(), "?on=2026-11-01").expectProblem(404, "NOT_FOUND");
    }
}
