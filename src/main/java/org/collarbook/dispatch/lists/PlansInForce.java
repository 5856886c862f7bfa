package org.collarbook.dispatch.lists;

import java.util.List;
import java.util.UUID;

import org.collarbook.dispatch.lists.PullList.FollowedPlan;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Which accepted plan a list follows besides. */
@Component
class PlansInForce {

    /** Of a {@code call} of a route on a visit: of the plans made for that day that were accepted, the last one. */
    static final String OF_CALL = """
            (select p.id, p.number from pull_plan_route r join pull_plan_acceptance a on a.plan_id = r.plan_id
                join pull_plan p on p.id = r.plan_id
                where r.route_id = call.route_id and call.visit between p.from_day and p.through_day
                order by a.number desc limit 1)""";

    private final JdbcClient jdbc;

    PlansInForce(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** That of the routes of the list; null where there is none, or where they go by several: each line tells its own. */
    @Nullable
    FollowedPlan followed(List<Call> calls) {
        var plans = jdbc.sql("select distinct f.id, f.number from unnest(:routes::uuid[], :visits::date[])"
                + " as call (route_id, visit) cross join lateral " + OF_CALL + " f")
                .param("routes", calls.stream().map(Call::planned).toArray(UUID[]::new))
                .param("visits", PullRows.dates(calls, Call::visit)).query(FollowedPlan.class).list();
        return plans.size() == 1 ? plans.getFirst() : null;
    }
}
