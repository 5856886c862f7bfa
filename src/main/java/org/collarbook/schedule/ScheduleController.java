package org.collarbook.schedule;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.HttpHeaders;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;

@RestController
@RequestMapping("/api/schedule")
@Tag(name = "Schedule")
class ScheduleController {

    private final ScheduleRows rows;

    ScheduleController(ScheduleRows rows) {
        this.rows = rows;
    }

    /** One line of the schedule; months as YYYY-MM. */
    record Line(YearMonth due, LocalDate lastDay, String status, String requirement, @Nullable String jurisdiction,
            @Nullable String rule, UUID containerId, String kind, String specification, @Nullable String maker,
            String serial,
            @Nullable YearMonth manufactured, String size, @Nullable String tag, @Nullable String site,
            @Nullable String siteName, @Nullable String customer) {

        static Line from(ScheduleRow row) {
            return new Line(YearMonth.from(row.due()), row.lastDay(), row.status(), row.requirement(),
                    row.jurisdiction(), row.rule(),
                    row.containerId(), row.kind(), row.specification(), row.maker(), row.serial(),
                    row.manufactured() == null ? null : YearMonth.from(row.manufactured()), row.size(), row.tag(),
                    row.site(), row.siteName(), row.customer());
        }
    }

    @GetMapping(produces = "application/json")
    @Operation(summary = "What falls due, in pages ordered by month")
    Page<Line> page(@ParameterObject ScheduleFilter filter, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var asked = PageSize.of(size);
        return Page.of(rows.page(filter, after(cursor), asked), asked,
                row -> Cursor.after(row.due(), row.containerId(), row.requirement(),
                        row.jurisdiction() == null ? "" : row.jurisdiction()))
                .map(read -> read.stream().map(Line::from).toList());
    }

    @GetMapping(produces = "text/csv")
    @Operation(summary = "The whole schedule as CSV (also by ?format=csv)")
    void csv(@ParameterObject ScheduleFilter filter, HttpServletResponse response) throws IOException {
        response.setContentType("text/csv");
        response.setCharacterEncoding(StandardCharsets.UTF_8);
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"schedule.csv\"");
        rows.write(filter, response.getOutputStream());
    }

    private static @Nullable Cursor after(@Nullable String text) {
        var cursor = Cursor.parse(text, 4);
        try {
            if (cursor != null) {
                LocalDate.parse(cursor.key().get(0));
                UUID.fromString(cursor.key().get(1));
            }
            return cursor;
        } catch (DateTimeException | IllegalArgumentException forged) {
            throw Cursor.refused(String.valueOf(text));
        }
    }
}
