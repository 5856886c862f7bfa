package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads the containers of all calls in one statement. Of each site: one index range by due month, one by standing, and
 * one of what will be out of service by the day though its month is later, such as at the end of a service life.
 */
@Component
class PullRows {

    /** A list longer than this is no list to work from. */
    static final int MOST = 10_000;

    /** Of a requirement {@code r}, its container {@code c} and the {@link #words}. */
    static final String COLUMNS = """
            c.id, c.kind, c.specification, c.maker, c.serial, c.manufactured, c.size, c.tag, w.status, r.requirement,
            nullif(r.jurisdiction, '') as jurisdiction, r.due, case when w.leaves then r.changes_on end as leaves_on,
            case when w.leaves then r.changes_to end as leaves_as, r.rule, w.holds""";

    static final String SELECT = """
            with call as (
                select * from unnest(:sites::uuid[], :routes::uuid[], :visits::date[], :days::date[], :last_due::date[],
                    :until::date[]) with ordinality as asked (site_id, route_id, visit, day, last_due, until, number)),
            found as (
                select call.number, r.* from call cross join lateral (
                    select false as undetermined, null::date as planned, null::int as plan, r.* from requirement r
                    where r.site_id = call.site_id and r.decisive and r.standing = 'DUE' and r.due <= call.last_due
                    union all
                    -- where one authority's answer is not known, what another's says is overdue is overdue all the same
                    select false, null, null, r.* from requirement r
                    where r.site_id = call.site_id and not r.decisive and r.standing = 'DUE' and r.due <= call.last_due
                      and exists (select from requirement worst where worst.container_id = r.container_id
                        and worst.decisive and worst.standing in ('UNDETERMINED', 'OTHER_AUTHORITY'))
                    union all
                    select false, null, null, r.* from requirement r
                    where r.site_id = call.site_id and r.decisive
                      and r.standing in ('CONDEMNED', 'REJECTED', 'ON_HOLD')
                    union all
                    select false, null, null, r.* from requirement r
                    where r.site_id = call.site_id and r.decisive and r.changes_on <= call.until
                      and r.changes_to in ('CONDEMNED', 'REJECTED', 'ON_HOLD', 'OVERDUE')
                    union all
                    select true, null, null, r.* from requirement r
                    where r.site_id = call.site_id and r.decisive and r.standing = 'UNDETERMINED'
                    union all
                    select true, null, null, r.* from requirement r
                    where r.site_id = call.site_id and r.decisive and r.standing <> 'UNDETERMINED'
                      and r.changes_on <= call.day and r.changes_to = 'UNDETERMINED'
                    union all
                    -- what the plan in force pulls on this visit or should have on one before, by the day it was made by
                    select false, l.visit, f.number, r.*
                    from lateral %s f
                    -- no condition on the visit that an index could take: the site's own lines are always the fewest
                    join pull_plan_line l on l.plan_id = f.id and l.site_id = call.site_id
                      and l.route_id = call.route_id and l.visit + 0 <= call.visit
                    cross join lateral (
                        select * from requirement where container_id = l.container_id and decisive offset 0) r
                    where r.site_id = call.site_id
                      and l.last_day = least((r.due + interval '1 month')::date - 1,
                        case when r.changes_to in ('CONDEMNED', 'REJECTED', 'ON_HOLD', 'OVERDUE')
                          then r.changes_on - 1 end)) r),
            -- each once, by the rule before the plan, by the clock that decides or else by the one that runs out first
            once as (
                select distinct on (number, undetermined, container_id) * from found
                order by number, undetermined, container_id, planned nulls first, decisive desc, due, requirement,
                    jurisdiction)
            select r.number as call, r.undetermined, case when r.undetermined then r.reasons end as reasons,
                r.planned, r.plan, r.planned < call.visit as missed, %s
            from once r join call on call.number = r.number
            -- by its key, however many are thought to be found: a list is short, and the register is not
            cross join lateral (select * from container where id = r.container_id offset 0) c%s
            where case when r.undetermined then w.status = 'UNDETERMINED'
                    else w.leaves or w.status not in ('UNDETERMINED', 'OTHER_AUTHORITY', 'NOT_REQUIRED') end
              and (w.holds is null or not 'LOST' = any (w.holds) or not held_as_lost(r.container_id))
            order by r.number, r.undetermined, r.due nulls first, c.size, c.serial, c.id
            limit :most""".formatted(PlansInForce.OF_CALL, COLUMNS, words("call.day", "call.until"));

    private static final String STANDING = "select 0 as call, false as undetermined, r.reasons, null::date as planned,"
            + " null::int as plan, false as missed, " + COLUMNS
            + " from requirement r join container c on c.id = r.container_id " + words(":day", ":day")
            + " where r.container_id = any (:ids) and r.decisive";

    private final JdbcClient jdbc;

    PullRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The status on a day, whether it goes out of service by another, and what holds it. */
    static String words(String day, String until) {
        return """

                cross join lateral (select
                    container_status(r.standing, r.due, r.filled_in_time, r.changes_on, r.changes_to, %s) as status,
                    r.changes_on <= %s and r.changes_to in ('CONDEMNED', 'REJECTED', 'ON_HOLD', 'OVERDUE') as leaves,
                    case when r.standing in ('CONDEMNED', 'REJECTED', 'ON_HOLD') then array(
                        select h.reason from filed_hold h where h.container_id = c.id
                          and not exists (select from lift_in_force l where l.hold_id = h.id)
                        order by h.occurred_at, h.id) end as holds
                    -- once for each row, wherever they are asked for
                    offset 0) w""".formatted(day, until);
    }

    /** How each of these stands on a day, wherever it is; one with no stored clock is not among them. */
    Map<UUID, PullRow> standing(Collection<UUID> containers, LocalDate day) {
        return jdbc.sql(STANDING).param("ids", containers.toArray(UUID[]::new)).param("day", day)
                .query(PullRow::read).list().stream().collect(Collectors.toMap(PullRow::id, Function.identity()));
    }

    List<PullRow> of(List<Call> calls) {
        var rows = jdbc.sql(SELECT)
                .param("sites", calls.stream().map(call -> call.site().siteId()).toArray(UUID[]::new))
                .param("routes", calls.stream().map(Call::planned).toArray(UUID[]::new))
                .param("visits", dates(calls, Call::visit))
                .param("days", days(calls, Call::day)).param("last_due", days(calls, call -> call.until().lastDue()))
                .param("until", days(calls, call -> call.until().dayOrNull())).param("most", MOST + 1)
                .query(PullRow::read).list();
        if (rows.size() > MOST) {
            throw Problem.of(HttpStatus.UNPROCESSABLE_CONTENT, "LIST_TOO_LONG", "More than " + MOST
                    + " containers must come back or be looked into: ask for fewer sites or an earlier date, or export"
                    + " the schedule.").asException();
        }
        return rows;
    }

    static String[] dates(List<Call> calls, Function<Call, @Nullable LocalDate> day) {
        return calls.stream().map(day).map(one -> one == null ? null : one.toString()).toArray(String[]::new);
    }

    /** Where no day is known every day counts. */
    private static String[] days(List<Call> calls, Function<Call, @Nullable LocalDate> day) {
        return calls.stream().map(day).map(one -> one == null ? "infinity" : one.toString()).toArray(String[]::new);
    }
}
