package org.collarbook.dispatch.plans;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;

import org.collarbook.platform.Unhurried;
import org.collarbook.custody.routes.Calendars;
import org.collarbook.custody.routes.Route;
import org.collarbook.dispatch.plans.Cylinder.Standing;
import org.collarbook.dispatch.plans.PlanInput.DrivenRoute;
import org.collarbook.dispatch.plans.PlanInput.Rack;
import org.collarbook.platform.jobs.JobFailure;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/** Reads what a plan is made from, in one snapshot of the database and a few statements. */
@Component
class ReadInput {

    /** More than this many to plan would not fit the memory that the service may have. */
    static final int MOST = 1_000_000;
    private static final int FETCHED = 5_000;

    /** {@code beside}: the counts of those that need no visit: nothing runs on them, their day is far, they stand elsewhere or are lost. */
    record Read(PlanInput input, Beside beside) {}

    record Beside(int notRequired, int dueLater, int elsewhere) {}

    static final class TooMany extends JobFailure {

        private static final long serialVersionUID = 1L;

        TooMany() {
            super("TOO_MANY_CYLINDERS",
                    "More than " + MOST + " cylinders must be planned: ask for fewer months, or depot by depot.");
        }
    }

    /**
     * The last day is that of the due month, or the one before it goes out of service by date alone. Where the deciding
     * authority's answer is not known, what another's says is overdue is overdue all the same.
     */
    private static final String CYLINDERS = """
            with known as (
                select c.id, c.serial, c.size, p.site_id,
                    (s.id is null or s.kind = 'CUSTOMER' or s.id = any (:stops))
                      and not (r.standing = 'ON_HOLD' and held_as_lost(c.id)) as out,
                    case when r.container_id is null then 'UNDETERMINED'
                        else container_status(r.standing, r.due, r.filled_in_time, r.changes_on, r.changes_to, :from)
                    end as word,
                    case when r.standing = 'DUE' then (r.due + interval '1 month')::date - 1 end as month_ends,
                    case when r.changes_to in ('CONDEMNED', 'REJECTED', 'ON_HOLD', 'OVERDUE')
                        or r.changes_to = 'USE_UP' and r.due is null then r.changes_on - 1 end as leaves,
                    b.month_ends as told_beside
                from container c
                left join requirement r on r.container_id = c.id and r.decisive
                left join placement p on p.container_id = c.id
                left join site s on s.id = p.site_id
                left join lateral (
                    select (min(one.due) + interval '1 month')::date - 1 as month_ends from requirement one
                    where r.standing in ('UNDETERMINED', 'OTHER_AUTHORITY') and one.container_id = c.id
                      and not one.decisive and one.standing = 'DUE') b on true
                where c.kind = 'CYLINDER' and not exists (select from absorbed a where a.container_id = c.id)
                  and (not :of_depot or s.id = any (:stops))),
            dated as (
                select id, serial, size, site_id, out, word,
                    case when word in ('UNDETERMINED', 'OTHER_AUTHORITY') then told_beside
                        when word = 'NOT_REQUIRED' then leaves
                        when word in ('CONDEMNED', 'REJECTED', 'ON_HOLD') then null
                        -- a clock that has run out is not believed of one that is called in date
                        when word in ('IN_DATE', 'DUE_THIS_MONTH') and least(month_ends, leaves) < :from then null
                        else least(month_ends, leaves) end as last_day
                from known),
            told as (
                select id, serial, size, site_id, out, last_day,
                    case when word in ('CONDEMNED', 'REJECTED', 'ON_HOLD') then 'OUT_OF_SERVICE'
                        when last_day is not null then 'DUE'
                        when word in ('OTHER_AUTHORITY', 'NOT_REQUIRED') then word
                        else 'UNDETERMINED' end as standing
                from dated)
            """;

    private static final String NEEDED = CYLINDERS + """
            select id, serial, size, site_id, standing, last_day from told
            where out and standing <> 'NOT_REQUIRED' and (last_day is null or last_day <= :limit) limit :most""";

    private static final String BESIDE = CYLINDERS + """
            select count(*) filter (where out and standing = 'NOT_REQUIRED') as not_required,
                count(*) filter (where out and last_day > :limit) as due_later,
                count(*) filter (where not out) as elsewhere
            from told""";

    private final JdbcClient jdbc;
    private final Calendars calendars;
    private final TransactionTemplate snapshot;

    ReadInput(JdbcClient jdbc, Calendars calendars, PlatformTransactionManager transactions) {
        this.jdbc = jdbc;
        this.calendars = calendars;
        this.snapshot = new TransactionTemplate(transactions);
        this.snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.snapshot.setReadOnly(true);
    }

    Read read(Asked asked) {
        return Objects.requireNonNull(snapshot.execute(status -> {
            Unhurried.go(jdbc);
            var routes = routes(asked);
            var limit = routes.stream().map(DrivenRoute::next).filter(Objects::nonNull)
                    .max(Comparator.naturalOrder()).filter(asked.through()::isBefore).orElse(asked.through());
            var stops = routes.stream().flatMap(route -> route.stops().stream()).distinct().toArray(UUID[]::new);
            var cylinders = cylinders(asked, stops, limit);
            var beside = parameters(BESIDE, asked, stops, limit).query(Beside.class).single();
            return new Read(new PlanInput(asked.from(), asked.through(), cylinders, routes, racks(), asked.shop()),
                    beside);
        }));
    }

    private List<DrivenRoute> routes(Asked asked) {
        var depot = asked.depot();
        var all = depot == null ? calendars.all() : calendars.ofDepot(depot);
        return all.routes().stream().filter(route -> depot == null || route.depot().equals(depot))
                .map(route -> driven(route, asked)).toList();
    }

    private static DrivenRoute driven(Route route, Asked asked) {
        return new DrivenRoute(route.id(), route.version(), route.vehicle(),
                route.visits().between(asked.from(), asked.through()),
                route.visits().next(asked.through()).orElse(null), Set.copyOf(route.stops()));
    }

    private List<Cylinder> cylinders(Asked asked, UUID[] stops, LocalDate limit) {
        var cylinders = new ArrayList<Cylinder>();
        parameters(NEEDED, asked, stops, limit).param("most", MOST + 1).withFetchSize(FETCHED)
                .query(row -> {
                    cylinders.add(cylinder(row));
                });
        if (cylinders.size() > MOST) {
            throw new TooMany();
        }
        return cylinders;
    }

    private StatementSpec parameters(String sql, Asked asked, UUID[] stops, LocalDate limit) {
        return jdbc.sql(sql).param("from", asked.from()).param("stops", stops).param("limit", limit)
                .param("of_depot", asked.depot() != null);
    }

    private static Cylinder cylinder(ResultSet row) throws SQLException {
        return new Cylinder(row.getObject("id", UUID.class), row.getString("serial"),
                row.getObject("site_id", UUID.class), row.getString("size").intern(),
                Standing.valueOf(row.getString("standing")), row.getObject("last_day", LocalDate.class));
    }

    private Map<Rack, Integer> racks() {
        var racks = new HashMap<Rack, Integer>();
        jdbc.sql("select vehicle_id, size, places from rack").query(row -> {
            racks.put(new Rack(row.getObject("vehicle_id", UUID.class), row.getString("size")), row.getInt("places"));
        });
        return racks;
    }
}
