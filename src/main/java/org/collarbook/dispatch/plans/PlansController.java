package org.collarbook.dispatch.plans;

import java.net.URI;
import java.time.DateTimeException;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.dispatch.plans.Comparison.Compared;
import org.collarbook.dispatch.plans.PlanSummary.MissingRack;
import org.collarbook.dispatch.plans.PlanSummary.Week;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.jobs.JobStatus;
import org.collarbook.platform.jobs.Jobs;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/pull-plans", produces = "application/json")
@Tag(name = "Dispatch")
class PlansController {

    /** {@code racks}: those that are too small, by day; what the shop is short of stands with its weeks. */
    @Schema(name = "PullPlanWeeks")
    record Weeks(List<Week> weeks, List<MissingRack> racks) {}

    private final PullPlans plans;
    private final PlanRows rows;
    private final Comparison comparison;
    private final Depots depots;
    private final Jobs jobs;
    private final MakePlans make;
    private final Idempotency idempotency;

    PlansController(PullPlans plans, PlanRows rows, Comparison comparison, Depots depots, Jobs jobs,
            MakePlans make, Idempotency idempotency) {
        this.plans = plans;
        this.rows = rows;
        this.comparison = comparison;
        this.depots = depots;
        this.jobs = jobs;
        this.make = make;
        this.idempotency = idempotency;
    }

    @PostMapping
    @ApiResponse(responseCode = "202", description = "Accepted")
    @Operation(summary = "Plan which visit pulls which cylinder, so that the load is spread", description = """
            None is to go overdue at a site, the shop's weeks and the vehicles' racks are kept, and as little remaining \
            life as possible is thrown away. What is late comes as soon as it can, before what is not; what is out of \
            service takes rack places before all others. A rack or vehicle that is not known is not taken for a large \
            one: such cylinders are left over with the reason. A shop that takes nothing is allowed: all is then left \
            over. The plan is made in the background: follow `Location`.""")
    ResponseEntity<?> plan(@RequestBody PlanRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var asked = request.read(depots);
        var answer = idempotency.once(key, caller.id(), "POST /api/pull-plans", request, () -> {
            var plan = plans.queue(asked, caller);
            return ResponseEntity.accepted().location(URI.create("/api/pull-plans/" + plan.id()))
                    .body(PlanResponse.from(plan));
        });
        jobs.start(make);
        return answer;
    }

    @GetMapping
    @Operation(summary = "Plans by pages, the newest first")
    Page<PlanResponse> list(@RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var rowsAPage = PageSize.of(size);
        return Page.of(plans.page(Cursor.parseNumber(cursor), rowsAPage), rowsAPage,
                plan -> Cursor.after(plan.number())).map(page -> page.stream().map(PlanResponse::from).toList());
    }

    @GetMapping("/{id}")
    @Operation(summary = "A plan, how far it is, and what it comes to", description = """
            `summary.plan` stands beside `summary.lastVisitBefore`: pulling each at the last visit before its date. \
            `gap` 0 is proof that no plan is better. The same input has the same `inputHash` and gives the same \
            `resultHash`.""")
    PlanResponse one(@PathVariable UUID id) {
        return PlanResponse.from(plans.known(id));
    }

    @GetMapping("/{id}/lines")
    @Operation(summary = "Which visit pulls which cylinder, by pages in the order of the visits")
    Page<PlanRows.Line> lines(@PathVariable UUID id, @RequestParam(required = false) @Nullable UUID route,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var rowsAPage = PageSize.of(size);
        var plan = done(id).id();
        var after = Cursor.parse(cursor, 2);
        try {
            return Page.of(rows.lines(plan, route, after, rowsAPage), rowsAPage,
                    line -> Cursor.after(line.visit(), line.containerId()));
        } catch (DateTimeException | IllegalArgumentException notOurs) {
            throw Cursor.refused(String.valueOf(cursor));
        }
    }

    @GetMapping("/{id}/remainder")
    @Operation(summary = "Which cylinders no visit of the plan pulls, and why, by pages")
    Page<PlanRows.Left> remainder(@PathVariable UUID id, @RequestParam(required = false) @Nullable String reason,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var inputs = new Inputs();
        var chosen = inputs.word("reason", reason, WhyNot.class);
        inputs.done();
        var rowsAPage = PageSize.of(size);
        return Page.of(rows.remainder(done(id).id(), chosen, Cursor.parseId(cursor), rowsAPage), rowsAPage,
                left -> Cursor.after(left.containerId()));
    }

    @GetMapping("/{id}/weeks")
    @Operation(summary = "What the plan asks of the shop week by week, and what more it and the racks would have to take", description = """
            `lastVisitBefore` is what pulling each at the last visit before its date would ask. `missing` is the least \
            capacity with which nobody is left over for want of it.""")
    Weeks weeks(@PathVariable UUID id) {
        var plan = done(id).id();
        return new Weeks(rows.weeks(plan), rows.missingRacks(plan));
    }

    @GetMapping("/{id}/comparison")
    @Operation(summary = "A plan beside another one: how many are pulled the same, earlier, later, in one alone; which, by pages", description = """
            `EARLIER` is a cylinder that the plan named in the path pulls before the plan named by `with` does.""")
    Compared comparison(@PathVariable UUID id, @RequestParam UUID with,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var rowsAPage = PageSize.of(size);
        var mine = done(id).id();
        var other = done(with).id();
        return new Compared(mine, other, comparison.counts(mine, other),
                Page.of(comparison.changed(mine, other, Cursor.parseId(cursor), rowsAPage), rowsAPage,
                        changed -> Cursor.after(changed.containerId())));
    }

    @PostMapping("/{id}/cancellation")
    @Operation(summary = "Cancel a plan that is not yet made")
    ResponseEntity<?> cancel(@PathVariable UUID id,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        return idempotency.once(key, caller.id(), "POST /api/pull-plans/" + id + "/cancellation", "",
                () -> ResponseEntity.ok(PlanResponse.from(plans.cancel(id))));
    }

    @PostMapping("/{id}/acceptance")
    @ApiResponse(responseCode = "201", description = "Created")
    @Operation(summary = "Take a plan that is done for the one to go by on the routes that it drives", description = """
            Of the plans that drive a route, the one accepted last is in force on it; an older plan may be accepted \
            again.""")
    ResponseEntity<?> accept(@PathVariable UUID id,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        return idempotency.once(key, caller.id(), "POST /api/pull-plans/" + id + "/acceptance", "",
                () -> ResponseEntity.created(URI.create("/api/pull-plans/" + id)).body(plans.accept(id, caller)));
    }

    /** An empty list of a plan that is not made would read as if nothing had to come back. */
    private PullPlan done(UUID id) {
        var plan = plans.known(id);
        if (plan.status() != JobStatus.DONE) {
            throw PullPlans.notDone(plan).asException();
        }
        return plan;
    }
}
