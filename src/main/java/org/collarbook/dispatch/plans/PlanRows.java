package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.dispatch.plans.PlanLine.Why;
import org.collarbook.dispatch.plans.PlanSummary.MissingRack;
import org.collarbook.dispatch.plans.PlanSummary.Week;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

import io.swagger.v3.oas.annotations.media.Schema;

/** Reads what a plan that is done consists of. */
@Component
class PlanRows {

    /** {@code wastedDays} of remaining life, from the visit through the last day; none of what is late. */
    @Schema(name = "PullPlanLine")
    record Line(UUID containerId, String specification, @Nullable String maker, String serial, String size,
            @Nullable String tag, UUID siteId, String siteCode, String siteName, UUID routeId, String routeCode,
            UUID vehicleId, LocalDate visit, @Nullable LocalDate lastDay, Why why, @Nullable Integer wastedDays) {}

    @Schema(name = "PullPlanLeftOver")
    record Left(UUID containerId, String specification, @Nullable String maker, String serial, String size,
            @Nullable String tag, @Nullable UUID siteId, @Nullable String siteCode, @Nullable String siteName,
            @Nullable LocalDate lastDay, WhyNot reason, String text, @Nullable LocalDate firstVisit,
            @Nullable LocalDate lastVisit) {}

    private record StoredLeft(UUID containerId, String specification, @Nullable String maker, String serial,
            String size, @Nullable String tag, @Nullable UUID siteId, @Nullable String siteCode,
            @Nullable String siteName, @Nullable LocalDate lastDay, WhyNot reason, @Nullable LocalDate firstVisit,
            @Nullable LocalDate lastVisit) {

        Left told() {
            return new Left(containerId, specification, maker, serial, size, tag, siteId, siteCode, siteName, lastDay,
                    reason, reason.text(), firstVisit, lastVisit);
        }
    }

    private final JdbcClient jdbc;
    private final JsonMapper json;

    PlanRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    /** By visit and container, of all routes or one. */
    List<Line> lines(UUID plan, @Nullable UUID route, @Nullable Cursor after, PageSize size) {
        var visit = after == null ? LocalDate.of(1, 1, 1) : WrittenTime.day(after.key().getFirst());
        var container = after == null ? new UUID(0, 0) : UUID.fromString(after.key().getLast());
        return jdbc.sql("""
                select l.container_id, c.specification, c.maker, c.serial, l.size, c.tag, l.site_id,
                    s.code as site_code, s.name as site_name, l.route_id, r.code as route_code, l.vehicle_id, l.visit,
                    l.last_day, l.why, case when l.why = 'DUE' then l.last_day - l.visit end as wasted_days
                from pull_plan_line l join container c on c.id = l.container_id join site s on s.id = l.site_id
                join route r on r.id = l.route_id
                where l.plan_id = :plan and (l.visit, l.container_id) > (:visit, :container)
                  and (cast(:route as uuid) is null or l.route_id = :route)
                order by l.visit, l.container_id limit :limit""")
                .param("plan", plan).param("visit", visit).param("container", container).param("route", route)
                .param("limit", size.limit()).query(Line.class).list();
    }

    List<Left> remainder(UUID plan, @Nullable WhyNot reason, @Nullable UUID after, PageSize size) {
        return jdbc.sql("""
                select l.container_id, c.specification, c.maker, c.serial, l.size, c.tag, l.site_id,
                    s.code as site_code, s.name as site_name, l.last_day, l.reason, l.first_visit, l.last_visit
                from pull_plan_remainder l join container c on c.id = l.container_id
                left join site s on s.id = l.site_id
                where l.plan_id = :plan and l.container_id > :after
                  and (cast(:reason as text) is null or l.reason = :reason)
                order by l.container_id limit :limit""")
                .param("plan", plan).param("after", after == null ? new UUID(0, 0) : after)
                .param("reason", reason == null ? null : reason.name()).param("limit", size.limit())
                .query(StoredLeft.class).list().stream().map(StoredLeft::told).toList();
    }

    List<Week> weeks(UUID plan) {
        return json.readValue(kept(plan, "weeks"), new TypeReference<List<Week>>() {
        });
    }

    List<MissingRack> missingRacks(UUID plan) {
        return json.readValue(kept(plan, "missing"), new TypeReference<List<MissingRack>>() {
        });
    }

    private String kept(UUID plan, String column) {
        return jdbc.sql("select " + column + "::text from pull_plan where id = ?").param(plan).query(String.class)
                .single();
    }
}
