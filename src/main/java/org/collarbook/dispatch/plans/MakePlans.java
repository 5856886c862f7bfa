package org.collarbook.dispatch.plans;

import org.collarbook.dispatch.plans.PullPlan.Stage;
import org.collarbook.platform.jobs.JobKind;
import org.collarbook.platform.jobs.JobQueue;
import org.collarbook.platform.jobs.JobRun;
import org.collarbook.platform.jobs.NotOurs;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/** Makes a plan that was queued. Its heavy part is a library that cannot be interrupted. */
@Component
class MakePlans implements JobKind {

    private static final Logger log = LoggerFactory.getLogger(MakePlans.class);

    private final PullPlans plans;
    private final ReadInput input;
    private final WritePlan write;

    MakePlans(PullPlans plans, ReadInput input, WritePlan write) {
        this.plans = plans;
        this.input = input;
        this.write = write;
    }

    @Override
    public String word() {
        return "Pull plan";
    }

    @Override
    public JobQueue queue() {
        return plans.jobs();
    }

    @Override
    public void run(JobRun job) {
        long start = System.nanoTime();
        var read = input.read(plans.known(job.claim().id()).asked());
        int cylinders = read.input().cylinders().size();
        job.tell(PullPlans.at(Stage.SOLVE, cylinders));
        var plan = Plan.of(read.input());
        job.tell(PullPlans.at(Stage.PROVE, cylinders));
        var made = MadePlan.of(plan, read.beside());
        job.tell(PullPlans.at(Stage.WRITE, cylinders));
        if (!write.finish(job.claim(), made)) {
            throw new NotOurs();
        }
        log.info("Pull plan {}: {} cylinders planned, {} left over, gap {}, in {} s", job.claim().id(),
                made.summary().planned(), made.summary().remainder(), made.summary().gap(),
                (System.nanoTime() - start) / 1_000_000_000.0);
    }
}
