package org.collarbook.dispatch.plans;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.dispatch.plans.Chains.LeftOver;
import org.collarbook.dispatch.plans.PlanInput.DrivenRoute;
import org.collarbook.dispatch.plans.PullPlan.Stage;
import org.collarbook.platform.BulkCopy;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

import tools.jackson.databind.json.JsonMapper;

/**
 * Who makes which plan. A plan is claimed for as long as a lease, which is renewed while it is made; when that runs out,
 * as after a kill, the next one claims it anew. Leases go by the database's clock, which all services share. Each
 * claim is another attempt, and only the latest attempt can write.
 */
@Component
class PlanQueue {

    static final int ATTEMPTS = 3;

    private static final String LEASE = "now() + interval '60 seconds'";

    record Claim(UUID id, int attempt, Asked asked) {}

    private final JdbcClient jdbc;
    private final PullPlans plans;
    private final BulkCopy copy;
    private final JsonMapper json;
    private final Clock clock;

    PlanQueue(JdbcClient jdbc, PullPlans plans, BulkCopy copy, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.plans = plans;
        this.copy = copy;
        this.json = json;
        this.clock = clock;
    }

    Optional<Claim> claim() {
        jdbc.sql("""
                update pull_plan set status = 'FAILED', finished_at = ?, failure_code = 'GIVEN_UP',
                    failure = 'It was begun ' || attempt || ' times and never came to an end.'
                where id in (select id from pull_plan where status = 'RUNNING' and lease_until < now() and attempt >= ?
                    for update skip locked)""").params(now(), ATTEMPTS).update();
        return jdbc.sql("""
                update pull_plan set status = 'RUNNING', attempt = attempt + 1, stage = 'READ', cylinders_read = 0,
                    started_at = ?, lease_until = %s
                where id = (select id from pull_plan
                    where status = 'QUEUED' or status = 'RUNNING' and lease_until < now()
                    order by number limit 1 for update skip locked)
                returning *""".formatted(LEASE)).param(now())
                .query((row, number) -> new Claim(row.getObject("id", UUID.class), row.getInt("attempt"),
                        plans.asked(row)))
                .optional();
    }

    /** Renews the lease and tells how far it is; false when the plan was cancelled or is another's by now. */
    boolean isStillOurs(Claim claim, Stage stage, int cylindersRead) {
        return jdbc.sql("""
                update pull_plan set stage = ?, cylinders_read = ?, lease_until = %s
                where id = ? and attempt = ? and status = 'RUNNING'""".formatted(LEASE))
                .params(stage.name(), cylindersRead, claim.id(), claim.attempt()).update() == 1;
    }

    void fail(Claim claim, String code, @Nullable String detail) {
        jdbc.sql("""
                update pull_plan set status = 'FAILED', finished_at = ?, failure_code = ?, failure = ?
                where id = ? and attempt = ? and status = 'RUNNING'""")
                .params(now(), code, detail, claim.id(), claim.attempt()).update();
    }

    /** All of it or nothing; nothing where the plan was cancelled or is another's by now. */
    @Transactional
    public boolean finish(Claim claim, MadePlan made) {
        // first, so that the row is locked and nobody cancels or claims it meanwhile
        if (!isDone(claim, made)) {
            return false;
        }
        var id = claim.id();
        copy.into("pull_plan_route (plan_id, route_id, version)", made.plan().input().routes(),
                (DrivenRoute route) -> new @Nullable Object[]{id, route.id(), route.version()});
        copy.into("pull_plan_line (plan_id, container_id, site_id, route_id, vehicle_id, visit, size, why, last_day)",
                made.plan().lines(), (PlanLine line) -> new @Nullable Object[]{id, line.cylinder().id(),
                        line.cylinder().site(), line.visit().route(), line.visit().vehicle(), line.visit().day(),
                        line.cylinder().size(), line.why(), line.cylinder().lastDay()});
        copy.into(
                "pull_plan_remainder (plan_id, container_id, site_id, size, reason, last_day, first_visit, last_visit)",
                made.remainder(), (LeftOver left) -> new @Nullable Object[]{id, left.cylinder().id(),
                        left.cylinder().site(), left.cylinder().size(), left.reason(), left.cylinder().lastDay(),
                        left.firstVisit(), left.lastVisit()});
        return true;
    }

    private boolean isDone(Claim claim, MadePlan made) {
        return jdbc.sql("""
                update pull_plan set status = 'DONE', stage = 'WRITE', lines_written = ?, finished_at = ?,
                    summary = cast(? as jsonb), weeks = cast(? as jsonb), missing = cast(? as jsonb), input_hash = ?,
                    result_hash = ?
                where id = ? and attempt = ? and status = 'RUNNING'""")
                .params(made.plan().lines().size(), now(), json.writeValueAsString(made.summary()),
                        json.writeValueAsString(made.weeks()), json.writeValueAsString(made.missingRacks()),
                        made.inputHash(), made.resultHash(), claim.id(), claim.attempt())
                .update() == 1;
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }
}
