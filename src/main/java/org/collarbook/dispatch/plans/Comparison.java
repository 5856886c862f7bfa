package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import io.swagger.v3.oas.annotations.media.Schema;

/** Two plans beside each other, cylinder by cylinder. */
@Component
class Comparison {

    /** How a plan differs from the one that it is compared with. */
    enum Change {
        EARLIER,
        LATER,
        /** On the same day, by another route. */
        OTHER_ROUTE,
        ONLY_HERE,
        ONLY_THERE
    }

    @Schema(name = "PullPlanChanges")
    record Counts(long same, long earlier, long later, long otherRoute, long onlyHere, long onlyThere) {}

    /** {@code withVisit} and {@code withRouteId} are those of the other plan. */
    @Schema(name = "PullPlanChange")
    record Changed(UUID containerId, String serial, String size, Change change, @Nullable LocalDate visit,
            @Nullable UUID routeId, @Nullable LocalDate withVisit, @Nullable UUID withRouteId) {}

    @Schema(name = "PullPlanComparison")
    record Compared(UUID plan, UUID with, Counts counts, Page<Changed> changed) {}

    private static final String BOTH = """
            with sides as (
                select container_id, mine.visit, mine.route_id, other.visit as with_visit,
                    other.route_id as with_route_id, coalesce(mine.size, other.size) as size,
                    case when other.visit is null then 'ONLY_HERE' when mine.visit is null then 'ONLY_THERE'
                        when mine.visit < other.visit then 'EARLIER' when mine.visit > other.visit then 'LATER'
                        when mine.route_id <> other.route_id then 'OTHER_ROUTE' end as change
                from (select * from pull_plan_line where plan_id = :plan and container_id > :after) mine
                full join (select * from pull_plan_line where plan_id = :with and container_id > :after) other
                    using (container_id))
            """;

    private final JdbcClient jdbc;

    Comparison(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Counts counts(UUID plan, UUID with) {
        return jdbc.sql(BOTH + """
                select count(*) filter (where change is null) as same,
                    count(*) filter (where change = 'EARLIER') as earlier,
                    count(*) filter (where change = 'LATER') as later,
                    count(*) filter (where change = 'OTHER_ROUTE') as other_route,
                    count(*) filter (where change = 'ONLY_HERE') as only_here,
                    count(*) filter (where change = 'ONLY_THERE') as only_there
                from sides""").param("plan", plan).param("with", with).param("after", new UUID(0, 0))
                .query(Counts.class).single();
    }

    List<Changed> changed(UUID plan, UUID with, @Nullable UUID after, PageSize size) {
        return jdbc.sql(BOTH + """
                select b.container_id, c.serial, b.size, b.change, b.visit, b.route_id, b.with_visit, b.with_route_id
                from sides b join container c on c.id = b.container_id where b.change is not null
                order by b.container_id limit :limit""")
                .param("plan", plan).param("with", with).param("after", after == null ? new UUID(0, 0) : after)
                .param("limit", size.limit()).query(Changed.class).list();
    }
}
