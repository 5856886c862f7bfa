package org.collarbook.dispatch.plans;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.jobs.JobStatus;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A plan as asked for, how far it is, and what it came to once it is done. */
record PullPlan(UUID id, int number, Asked asked, LocalDate through, JobStatus status, Progress progress,
        Instant requestedAt, UUID requestedBy, @Nullable Instant startedAt, @Nullable Instant finishedAt,
        @Nullable Failure failure, @Nullable PlanSummary summary, @Nullable String inputHash,
        @Nullable String resultHash, @Nullable Instant acceptedAt, int routesInForce,
        List<String> routesChanged) {

    /** What a plan that is being made is at. */
    enum Stage {
        READ,
        SOLVE,
        PROVE,
        WRITE
    }

    @Schema(name = "PullPlanProgress")
    record Progress(@Nullable Stage stage, int cylindersRead, int linesWritten, int attempt) {}

    @Schema(name = "PullPlanFailure")
    record Failure(String code, String detail) {}
}
