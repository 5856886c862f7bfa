package org.collarbook.schedule;

import java.io.IOException;
import java.time.Clock;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Page;
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
class UndeterminedController {

    /** Without a month there is none to begin or end with, and the status is what it is. */

    private final UndeterminedRows rows;
    private final ScheduleQuestions questions;
    private final Replays replays;
    private final Clock clock;

    UndeterminedController(UndeterminedRows rows, ScheduleQuestions questions, Replays replays, Clock clock) {
        this.replays = replays;
        this.clock = clock;
        this.rows = rows;
        this.questions = questions;
    }

    @GetMapping(path = "/api/schedule/undetermined", produces = "application/json")
    @Operation(summary = "What has no month in the schedule, for its due month cannot be told", description = """
            Clocks of which a fact is missing, in pages, each with what is missing. Those of held and rejected containers \
            are listed as well where no month is known and something is missing. Filters as of the schedule, `asOf` and \
            `knownAt` too.""")
    Page<UndeterminedRows.Undetermined> page(@RequestParam(required = false) @Nullable String site,
            @RequestParam(required = false) @Nullable String customer,
            @RequestParam(required = false) @Nullable String route,
            @RequestParam(required = false) @Nullable String kind,
            @RequestParam(required = false) @Nullable String containerSize,
            @RequestParam(required = false) @Nullable String specification,
            @RequestParam(required = false) @Nullable String requirement,
            @RequestParam(required = false) @Nullable String owner, @ParameterObject ReplayQuestion then,
            @RequestParam(required = false) @Nullable String cursor,
            @Parameter(schema = @Schema(type = "integer", format = "int32")) @RequestParam(required = false) @Nullable String size,
            Inputs wrong) throws IOException {
        var filter = questions.read(new ScheduleQuestion(null, null, site, customer, route, kind, containerSize,
                specification, requirement, null, owner), wrong);
        var replay = then.read(clock.instant(), wrong);
        var asked = PageAsked.read(size, cursor, UndeterminedController::after, wrong);
        wrong.done();
        var read = replays.read(filter, replay, source -> rows.page(source, filter, asked.after(), asked.size()));
        return Page.of(read, asked.size(),
                UndeterminedRows.Undetermined::cursor);
    }

    private static @Nullable Cursor after(@Nullable String text) {
        var cursor = Cursor.parse(text, 3);
        try {
            if (cursor != null) {
                UUID.fromString(cursor.key().getFirst());
            }
            return cursor;
        } catch (IllegalArgumentException forged) {
            throw Cursor.refused(String.valueOf(text));
        }
    }
}
