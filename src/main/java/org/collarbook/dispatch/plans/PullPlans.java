package org.collarbook.dispatch.plans;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.access.Caller;
import org.collarbook.dispatch.plans.PlanInput.ShopCapacity;
import org.collarbook.dispatch.plans.PullPlan.Failure;
import org.collarbook.dispatch.plans.PullPlan.Progress;
import org.collarbook.dispatch.plans.PullPlan.Stage;
import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.collarbook.platform.jobs.Columns;
import org.collarbook.platform.jobs.JobQueue;
import org.collarbook.platform.jobs.JobStatus;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** The plans, and what their callers do with them. */
@Component
class PullPlans {

    private static final String SELECT = """
            select p.*, (select max(a.accepted_at) from pull_plan_acceptance a where a.plan_id = p.id) as accepted_at,
                case when exists (select from pull_plan_acceptance a where a.plan_id = p.id)
                    then (select count(*) from pull_plan_in_force f where f.plan_id = p.id) else 0
                end as routes_in_force,
                array(select r.code from pull_plan_route o join route r on r.id = o.route_id
                    where o.plan_id = p.id and r.version <> o.version order by r.code) as routes_changed
            from pull_plan p
            """;

    /** {@code routesChanged}: of these the plan may name days on which they are no longer driven. */
    record Acceptance(UUID id, UUID planId, int planNumber, Instant acceptedAt, UUID acceptedBy,
            List<String> routesChanged) {}

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;
    private final JobQueue jobs;

    PullPlans(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
        this.jobs = new JobQueue(jdbc, clock, "pull_plan", at(Stage.READ, 0));
    }

    /** The plans that are to be made. */
    JobQueue jobs() {
        return jobs;
    }

    static Columns at(Stage stage, int cylindersRead) {
        return Columns.set("stage = ?, cylinders_read = ?", stage.name(), cylindersRead);
    }

    PullPlan queue(Asked asked, Caller caller) {
        var id = Ids.next();
        Map<String, Integer> weeks = asked.shop().weeks().entrySet().stream()
                .collect(Collectors.toMap(week -> week.getKey().toString(), Map.Entry::getValue));
        jdbc.sql("""
                insert into pull_plan (id, requested_at, requested_by, from_day, months, through_day, depot_id,
                    shop_per_week, shop_weeks)
                values (?, ?, ?, ?, ?, ?, ?, ?, cast(? as jsonb))""")
                .params(id, now(), caller.id(), asked.from(), asked.months(), asked.through(), asked.depot(),
                        asked.shop().perWeek(), json.writeValueAsString(weeks))
                .update();
        return known(id);
    }

    PullPlan known(UUID id) {
        return find(id).orElseThrow(() -> Problem.notFound("pull plan").asException());
    }

    Optional<PullPlan> find(UUID id) {
        return jdbc.sql(SELECT + "where p.id = ?").param(id).query(this::plan).optional();
    }

    List<PullPlan> page(@Nullable Long before, PageSize size) {
        return jdbc.sql(SELECT + "where p.number < ? order by p.number desc limit ?")
                .params(before == null ? Long.MAX_VALUE : before, size.limit()).query(this::plan).list();
    }

    @Transactional
    PullPlan cancel(UUID id) {
        boolean cancelled = jobs.cancel(id);
        var plan = known(id);
        if (!cancelled) {
            throw Problem.conflict("PLAN_IS_OVER", "Plan " + plan.number() + " is " + plan.status()
                    + ": only one that is not yet made can be cancelled.").asException();
        }
        return plan;
    }

    @Transactional
    Acceptance accept(UUID id, Caller caller) {
        var plan = known(id);
        if (plan.status() != JobStatus.DONE) {
            throw notDone(plan).asException();
        }
        var acceptance = new Acceptance(Ids.next(), id, plan.number(), clock.instant(), caller.id(),
                plan.routesChanged());
        jdbc.sql("insert into pull_plan_acceptance (id, plan_id, accepted_at, accepted_by) values (?, ?, ?, ?)")
                .params(acceptance.id(), id, now(), caller.id()).update();
        return acceptance;
    }

    static Problem notDone(PullPlan plan) {
        return Problem.conflict("PLAN_NOT_DONE", "Plan " + plan.number() + " is " + plan.status()
                + ": only one that is DONE has lines, can be compared and accepted.");
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private PullPlan plan(ResultSet row, int number) throws SQLException {
        var stage = row.getString("stage");
        var code = row.getString("failure_code");
        var summary = row.getString("summary");
        return new PullPlan(row.getObject("id", UUID.class), row.getInt("number"), asked(row),
                row.getObject("through_day", LocalDate.class), JobStatus.valueOf(row.getString("status")),
                new Progress(stage == null ? null : Stage.valueOf(stage), row.getInt("cylinders_read"),
                        row.getInt("lines_written"), row.getInt("attempt")),
                StoredMoment.of(row, "requested_at"),
                row.getObject("requested_by", UUID.class), StoredMoment.orNull(row, "started_at"),
                StoredMoment.orNull(row, "finished_at"),
                code == null ? null : new Failure(code, row.getString("failure")),
                summary == null ? null : json.readValue(summary, PlanSummary.class), row.getString("input_hash"),
                row.getString("result_hash"), StoredMoment.orNull(row, "accepted_at"), row.getInt("routes_in_force"),
                List.of((String[]) row.getArray("routes_changed").getArray()));
    }

    private Asked asked(ResultSet row) throws SQLException {
        var weeks = new TreeMap<IsoWeek, Integer>();
        json.readValue(row.getString("shop_weeks"), new TypeReference<Map<String, Integer>>() {
        })
                .forEach((week, capacity) -> weeks.put(IsoWeek.tryParse(week).orElseThrow(), capacity));
        return new Asked(row.getObject("from_day", LocalDate.class), row.getInt("months"),
                row.getObject("depot_id", UUID.class), new ShopCapacity(row.getInt("shop_per_week"), weeks));
    }
}
