package org.collarbook.dispatch.plans;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;

import org.collarbook.dispatch.plans.PlanQueue.Claim;
import org.collarbook.dispatch.plans.PullPlan.Stage;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.dao.DataAccessException;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;

/**
 * Makes the plans that are queued, one after another, on a thread of its own: the heavy part is a library that cannot be
 * interrupted. Another thread renews the lease meanwhile.
 */
@Component
class MakePlans implements DisposableBean {

    private static final Logger log = LoggerFactory.getLogger(MakePlans.class);
    private static final int BEAT_SECONDS = 10;
    private static final ThreadFactory DAEMONS = Thread.ofPlatform().daemon().name("pull-plans-", 0).factory();

    /** The plan was cancelled, or another service has taken it up. */
    private static final class NotOurs extends RuntimeException {}

    private final PlanQueue queue;
    private final ReadInput input;
    private final ExecutorService maker = Executors.newSingleThreadExecutor(DAEMONS);
    private final ScheduledExecutorService beats = Executors.newSingleThreadScheduledExecutor(DAEMONS);

    MakePlans(PlanQueue queue, ReadInput input) {
        this.queue = queue;
        this.input = input;
    }

    /** What a killed service left, and what another one queued and then died. */
    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}", fixedDelayString = "PT5S")
    void start() {
        maker.execute(this::all);
    }

    private void all() {
        try {
            for (var claim = queue.claim(); claim.isPresent(); claim = queue.claim()) {
                make(claim.get());
            }
        } catch (DataAccessException | TransactionException failed) {
            log.warn("The making of pull plans was interrupted and goes on later", failed);
        }
    }

    private void make(Claim claim) {
        var run = new Run(claim);
        var beat = beats.scheduleWithFixedDelay(run::beat, BEAT_SECONDS, BEAT_SECONDS, TimeUnit.SECONDS);
        try {
            run.make();
        } catch (NotOurs cancelled) {
            log.info("Pull plan {} was cancelled or taken up by another service", claim.id());
        } catch (ReadInput.TooMany tooMany) {
            queue.fail(claim, "TOO_MANY_CYLINDERS", tooMany.getMessage());
        } catch (DataAccessException | TransactionException failed) {
            // its lease runs out, and it is taken up again
            log.warn("Pull plan {} was interrupted and is taken up again", claim.id(), failed);
        } catch (RuntimeException | LinkageError fault) {
            log.error("Pull plan {} failed", claim.id(), fault);
            queue.fail(claim, "UNEXPECTED", "A fault of the service; its log has it.");
        } finally {
            beat.cancel(false);
        }
    }

    private final class Run {

        private final Claim claim;
        private volatile Stage stage = Stage.READ;
        private volatile int cylinders;

        Run(Claim claim) {
            this.claim = claim;
        }

        void make() {
            long start = System.nanoTime();
            var read = input.read(claim.asked());
            cylinders = read.input().cylinders().size();
            at(Stage.SOLVE);
            var plan = Plan.of(read.input());
            at(Stage.PROVE);
            var made = MadePlan.of(plan, read.beside());
            at(Stage.WRITE);
            if (!queue.finish(claim, made)) {
                throw new NotOurs();
            }
            log.info("Pull plan {}: {} cylinders planned, {} left over, gap {}, in {} s", claim.id(),
                    made.summary().planned(), made.summary().remainder(), made.summary().gap(),
                    (System.nanoTime() - start) / 1_000_000_000.0);
        }

        private void at(Stage next) {
            stage = next;
            if (!queue.isStillOurs(claim, next, cylinders)) {
                throw new NotOurs();
            }
        }

        void beat() {
            try {
                queue.isStillOurs(claim, stage, cylinders);
            } catch (DataAccessException | TransactionException missed) {
                log.warn("The lease of pull plan {} could not be renewed this time", claim.id(), missed);
            }
        }
    }

    /** What is being made is left to its lease. */
    @Override
    public void destroy() {
        maker.shutdownNow();
        beats.shutdownNow();
    }
}
