package org.collarbook.dispatch.lists;

import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.dispatch.lists.PullList.FollowedPlan;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Which accepted plan a list follows besides. */
@Component
class PlansInForce {

    private final JdbcClient jdbc;

    PlansInForce(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** That of the routes of the list; null where there is none, or where they go by several: each line tells its own. */
    @Nullable
    FollowedPlan followed(List<Call> calls) {
        var routes = calls.stream().map(Call::planned).filter(Objects::nonNull).distinct().toArray(UUID[]::new);
        var plans = jdbc.sql("select distinct plan_id as id, number from pull_plan_in_force where route_id = any (?)")
                .param(routes).query(FollowedPlan.class).list();
        return plans.size() == 1 ? plans.getFirst() : null;
    }
}
