package org.collarbook.dispatch.plans;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.dispatch.plans.PullPlan.Stage;
import org.collarbook.platform.jobs.Claim;
import org.collarbook.platform.jobs.JobQueue;
import org.collarbook.platform.jobs.Jobs;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** Who makes a plan when services die, are slow, or the plan is cancelled under them. */
@RegisterTest
class PlanJobsTests {

    private final Api api;
    private final PullPlans plans;
    private final JobQueue queue;
    private final WritePlan write;
    private final Jobs jobs;
    private final ReadInput input;
    private final MakePlans make;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Tables tables;
    private final PlanFixture fixture;

    PlanJobsTests(Api api, Given given, PullPlans plans, WritePlan write, Jobs jobs, ReadInput input,
            MakePlans make, JdbcClient jdbc, TransactionTemplate transaction, Tables tables) {
        this.api = api;
        this.plans = plans;
        this.queue = plans.jobs();
        this.write = write;
        this.jobs = jobs;
        this.input = input;
        this.make = make;
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.tables = tables;
        this.fixture = new PlanFixture(api, given, jdbc);
    }

    /** As by another service: queued and claimed before anybody here sees it. */
    private Claim claimedElsewhere() {
        var site = fixture.customerSite();
        fixture.route(fixture.vehicle(3), site);
        fixture.cylinder(site, "2015-02");
        var asked = new Asked(TestClock.TODAY, 6, fixture.depot, new PlanInput.ShopCapacity(4,
                new TreeMap<>()));
        var caller = new Caller(UUID.randomUUID(), "a dispatcher", Set.of(Role.DISPATCHER),
                new CustomerScope.Everyone());
        return Objects.requireNonNull(transaction.execute(status -> {
            plans.queue(asked, caller);
            return queue.claim().orElseThrow();
        }));
    }

    private MadePlan made(Claim claim) {
        var read = input.read(plans.known(claim.id()).asked());
        return MadePlan.of(Plan.of(read.input()), read.beside());
    }

    private void leaseRunsOut(Claim claim) {
        jdbc.sql("update pull_plan set lease_until = now() - interval '1 second' where id = ?").param(claim.id())
                .update();
    }

    private String path(Claim claim) {
        return "/api/pull-plans/" + claim.id();
    }

    @Test
    void twoServicesNeverMakeTheSamePlan() {
        var claim = claimedElsewhere();
        assertThat(queue.claim()).isEmpty();
        assertThat(queue.renew(claim, PullPlans.at(Stage.SOLVE, 1))).isTrue();
        var running = api.as(Role.DISPATCHER).get(path(claim)).expect(200);
        assertThat(running.text("/status")).isEqualTo("RUNNING");
        assertThat(running.text("/progress/stage")).isEqualTo("SOLVE");
        assertThat(running.at("/progress/cylindersRead").asInt()).isEqualTo(1);
        assertThat(write.finish(claim, made(claim))).isTrue();
        assertThat(fixture.over(path(claim)).text("/status")).isEqualTo("DONE");
    }

    @Test
    void aPlanWhoseMakerDiedIsTakenUpAndTheMakerCannotWriteAnyMore() {
        var claim = claimedElsewhere();
        var late = made(claim);
        leaseRunsOut(claim);
        jobs.start(make);
        var done = fixture.over(path(claim));
        assertThat(done.text("/status")).as(done.body()).isEqualTo("DONE");
        assertThat(done.at("/progress/attempt").asInt()).isEqualTo(2);
        tables.unchangedBy(() -> {
            assertThat(queue.renew(claim, PullPlans.at(Stage.WRITE, 1))).isFalse();
            assertThat(write.finish(claim, late)).isFalse();
            queue.fail(claim, "UNEXPECTED", "too late");
        });
        assertThat(api.as(Role.DISPATCHER).get(path(claim)).text("/status")).isEqualTo("DONE");
    }

    @Test
    void aPlanThatKillsWhoeverMakesItIsGivenUp() {
        var claim = claimedElsewhere();
        jdbc.sql("update pull_plan set in_vain = ? where id = ?").params(JobQueue.ATTEMPTS, claim.id()).update();
        leaseRunsOut(claim);
        jobs.start(make);
        var failed = fixture.over(path(claim));
        assertThat(failed.text("/status")).isEqualTo("FAILED");
        assertThat(failed.text("/failure/code")).isEqualTo("GIVEN_UP");
    }

    @Test
    void aPlanThatIsCancelledWhileItIsMadeWritesNothing() {
        var claim = claimedElsewhere();
        var made = made(claim);
        for (var asked : new String[]{"/lines", "/remainder", "/weeks", "/comparison?with=" + claim.id()}) {
            api.as(Role.DISPATCHER).get(path(claim) + asked).expectProblem(409, "PLAN_NOT_DONE");
        }
        tables.unchangedBy(() -> api.as(Role.DISPATCHER).post(path(claim) + "/acceptance", "")
                .expectProblem(409, "PLAN_NOT_DONE"));
        assertThat(api.as(Role.DISPATCHER).post(path(claim) + "/cancellation", "").expect(200).text("/status"))
                .isEqualTo("CANCELLED");
        assertThat(queue.renew(claim, PullPlans.at(Stage.PROVE, 1))).isFalse();
        assertThat(write.finish(claim, made)).isFalse();
        assertThat(jdbc.sql("select count(*) from pull_plan_line where plan_id = ?").param(claim.id())
                .query(Long.class).single()).isZero();
        api.as(Role.DISPATCHER).post(path(claim) + "/cancellation", "").expectProblem(409, "PLAN_IS_OVER");
    }
}
