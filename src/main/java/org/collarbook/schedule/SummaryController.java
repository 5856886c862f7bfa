package org.collarbook.schedule;

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
import jakarta.servlet.http.HttpServletRequest;

@RestController
@Tag(name = "Schedule")
class SummaryController {

    private final SummaryRows rows;
    private final ScheduleQuestions questions;

    SummaryController(SummaryRows rows, ScheduleQuestions questions) {
        this.rows = rows;
        this.questions = questions;
    }

    private enum By {
        SITE
    }

    @GetMapping(path = "/api/schedule/summary", produces = "application/json")
    @Operation(summary = "How many fall due, by month and by site", description = """
            The lines of the schedule counted, under the same filters, each month and site with its statuses as of today's \
            date at the site. `by=site` adds `cells`, month by site. What has no due month is counted in none: see \
            /api/schedule/undetermined.""")
    ScheduleSummary summary(@ParameterObject ScheduleQuestion question,
            @Parameter(schema = @Schema(type = "string", allowableValues = "site")) @RequestParam(required = false) @Nullable String by,
            HttpServletRequest request) {
        var wrong = new Inputs();
        ScheduleQuestion.refuseUnknown(request, wrong, "by");
        var filter = questions.read(question, wrong);
        var parts = wrong.word("by", by, By.class);
        wrong.done();
        return rows.count(filter, parts == By.SITE);
    }
}
