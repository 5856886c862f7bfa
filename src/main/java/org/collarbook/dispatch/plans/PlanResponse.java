package org.collarbook.dispatch.plans;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.dispatch.plans.PullPlan.Failure;
import org.collarbook.dispatch.plans.PullPlan.Progress;
import org.collarbook.platform.jobs.JobStatus;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * A plan: what was asked for, how far it is, and once it is done what it comes to. {@code routesInForce}: on how many
 * routes it is the one accepted last; {@code routesChanged}: the codes of routes that are another version by now than the
 * plan was made for, so that it may name days on which they are not driven.
 */
@Schema(name = "PullPlan")
record PlanResponse(UUID id, int number, LocalDate from, int months, LocalDate through, @Nullable UUID depot,
        PlannedShop shop, JobStatus status, Progress progress, Instant requestedAt, UUID requestedBy,
        @Nullable Instant startedAt, @Nullable Instant finishedAt, @Nullable Failure failure,
        @Nullable PlanSummary summary, @Nullable String inputHash, @Nullable String resultHash,
        @Nullable Instant acceptedAt, int routesInForce, List<String> routesChanged) {

    @Schema(name = "PullPlanShop")
    record PlannedShop(int perWeek, List<PlannedWeek> weeks) {}

    @Schema(name = "PullPlanShopWeek")
    record PlannedWeek(String week, int capacity) {}

    static PlanResponse from(PullPlan plan) {
        var shop = plan.asked().shop();
        var weeks = shop.weeks().entrySet().stream()
                .map(week -> new PlannedWeek(week.getKey().toString(), week.getValue())).toList();
        return new PlanResponse(plan.id(), plan.number(), plan.asked().from(), plan.asked().months(), plan.through(),
                plan.asked().depot(), new PlannedShop(shop.perWeek(), weeks), plan.status(), plan.progress(),
                plan.requestedAt(), plan.requestedBy(), plan.startedAt(), plan.finishedAt(), plan.failure(),
                plan.summary(), plan.inputHash(), plan.resultHash(), plan.acceptedAt(), plan.routesInForce(),
                plan.routesChanged());
    }
}
