package org.collarbook.dispatch.plans;

import java.util.List;

import org.collarbook.dispatch.plans.Chains.LeftOver;
import org.collarbook.dispatch.plans.PlanSummary.MissingRack;
import org.collarbook.dispatch.plans.PlanSummary.Week;
import org.collarbook.dispatch.plans.ReadInput.Beside;

/** A plan with all that is kept of it. */
record MadePlan(Plan plan, List<LeftOver> remainder, PlanSummary summary, List<Week> weeks,
        List<MissingRack> missingRacks, String inputHash, String resultHash) {

    static MadePlan of(Plan plan, Beside beside) {
        var remainder = plan.remainder();
        var extra = plan.extra();
        return new MadePlan(plan, remainder, PlanSummary.of(plan, remainder, extra, plan.gap(), beside),
                PlanSummary.weeks(plan, extra), PlanSummary.racks(extra), Hashes.of(plan.input()),
                Hashes.of(plan.lines(), remainder));
    }
}
