package org.collarbook.schedule;

import java.io.IOException;
import java.time.Clock;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Schedule")
class SummaryController {

    private final SummaryRows rows;
    private final ScheduleQuestions questions;
    private final Replays replays;
    private final Clock clock;

    SummaryController(SummaryRows rows, ScheduleQuestions questions, Replays replays, Clock clock) {
        this.replays = replays;
        this.clock = clock;
        this.rows = rows;
        this.questions = questions;
    }

    private enum By {
        SITE
    }

    @GetMapping(path = "/api/schedule/summary", produces = "application/json")
    @Operation(summary = "How many fall due, by month and by site", description = """
            The lines of the schedule counted, under the same filters, each month and site with its statuses as of today's \
            date at the site, or as `asOf` and `knownAt` ask. `by=site` adds `cells`, month by site. What has no due month is counted in none: see \
            /api/schedule/undetermined.""")
    ScheduleSummary summary(@ParameterObject ScheduleQuestion question, @ParameterObject ReplayQuestion then,
            @Parameter(schema = @Schema(type = "string", allowableValues = "site")) @RequestParam(required = false) @Nullable String by,
            Inputs wrong) throws IOException {
        var filter = questions.read(question, wrong);
        var replay = then.read(clock.instant(), wrong);
        var parts = wrong.word("by", by, By.class);
        wrong.done();
        return replays.read(filter, replay, source -> rows.count(source, filter, parts == By.SITE));
    }
}
