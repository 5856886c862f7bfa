package org.collarbook.dispatch.plans;

import org.collarbook.dispatch.plans.Chains.LeftOver;
import org.collarbook.dispatch.plans.PlanInput.DrivenRoute;
import org.collarbook.dispatch.plans.PullPlan.Stage;
import org.collarbook.platform.BulkCopy;
import org.collarbook.platform.jobs.Claim;
import org.collarbook.platform.jobs.Columns;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

import tools.jackson.databind.json.JsonMapper;

/** Stores what a plan that was made consists of. */
@Component
class WritePlan {

    private final PullPlans plans;
    private final BulkCopy copy;
    private final JsonMapper json;

    WritePlan(PullPlans plans, BulkCopy copy, JsonMapper json) {
        this.plans = plans;
        this.copy = copy;
        this.json = json;
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
        return plans.jobs().finish(claim, Columns.set("""
                stage = ?, cylinders_read = ?, lines_written = ?, summary = cast(? as jsonb), weeks = cast(? as jsonb),
                missing = cast(? as jsonb), input_hash = ?, result_hash = ?""", Stage.WRITE.name(),
                made.plan().input().cylinders().size(),
                made.plan().lines().size(), json.writeValueAsString(made.summary()),
                json.writeValueAsString(made.weeks()), json.writeValueAsString(made.missingRacks()), made.inputHash(),
                made.resultHash()));
    }
}
