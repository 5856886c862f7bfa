package org.collarbook.schedule;

import org.collarbook.platform.Inputs;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;

/**
 * What the clerk asks for, as query parameters; all are texts, so that everything that is wrong is told at once. What is
 * absent or empty leaves that side open. {@code size} is how many rows a page has, so a container's is another word.
 */
record ScheduleQuestion(
        @Parameter(description = "first month, as YYYY-MM") @Nullable String from,
        @Parameter(description = "last month, as YYYY-MM") @Nullable String to,
        @Parameter(description = "id or code") @Nullable String site,
        @Parameter(description = "id or code") @Nullable String customer,
        @Parameter(description = "id or code: what stands at its stops") @Nullable String route,
        @Parameter(schema = @Schema(implementation = ContainerKind.class)) @Nullable String kind,
        @Parameter(description = "such as 20 lb, 1000 gal or unknown size") @Nullable String containerSize,
        @Parameter(description = "such as DOT-4BA240") @Nullable String specification,
        @Parameter(schema = @Schema(implementation = Requirement.class)) @Nullable String requirement,
        @Parameter(schema = @Schema(implementation = Status.class)) @Nullable String status,
        @Parameter(description = "OWN for the distributor's own, or the name of another owner") @Nullable String owner) {

    /** Asks for the same again, whatever becomes of the codes. */
    static ScheduleQuestion of(ScheduleFilter filter) {
        return new ScheduleQuestion(text(filter.from()), text(filter.to()), text(filter.site()),
                text(filter.customer()), text(filter.route()), text(filter.kind()), filter.containerSize(),
                filter.specification(), text(filter.requirement()), text(filter.status()), filter.owner());
    }

    private static @Nullable String text(@Nullable Object value) {
        return value == null ? null : value.toString();
    }

    /** The same of one month, told by itself or as the first and the last. */
    ScheduleQuestion ofMonth(@Nullable String month, Inputs wrong) {
        var told = month == null || month.isBlank() ? from : month;
        boolean isOne = month == null || month.isBlank()
                ? from != null && !from.isBlank() && to != null && from.strip().equals(to.strip())
                : from == null && to == null;
        if (!isOne) {
            wrong.refuse("month", month == null ? "MISSING" : "TOLD_TWICE", month,
                    "one month as YYYY-MM, or from and to of the same month");
        }
        return new ScheduleQuestion(told, told, site, customer, route, kind, containerSize, specification, requirement,
                status, owner);
    }
}
