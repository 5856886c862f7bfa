package org.collarbook.schedule;

import java.time.Instant;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * How many clocks fall due, by month and by site; {@code cells}, month by site, where it is asked for. A site that is not
 * known is null.
 */
@Schema(name = "ScheduleSummary")
record ScheduleSummary(Instant readAt, long count, List<Month> months, List<AtSite> sites,
        @Nullable List<Cell> cells) {

    @Schema(name = "ScheduleMonth")
    record Month(YearMonth due, long count, Map<String, Long> statuses) {}

    @Schema(name = "ScheduleSite")
    record AtSite(@Nullable String site, @Nullable String siteName, long count, Map<String, Long> statuses) {}

    @Schema(name = "ScheduleCell")
    record Cell(YearMonth due, @Nullable String site, long count, Map<String, Long> statuses) {}
}
