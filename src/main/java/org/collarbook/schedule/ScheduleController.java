package org.collarbook.schedule;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.CalendarFile;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.LongAnswers;
import org.collarbook.platform.Page;
import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.HttpHeaders;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

@RestController
@RequestMapping("/api/schedule")
@Tag(name = "Schedule")
class ScheduleController {

    private static final String TOLD = """
            `site`, `customer` and `route` take an id or a code, a route what stands at its stops. `containerSize` is a \
            size as rows have it; `size` is how many rows a page has. `owner` is OWN for the distributor's own, or the \
            name of another owner in any case. A parameter that is not named here is refused. `asOf` gives the schedule of \
            another day, `knownAt` that which the register would have given by what it knew at a moment, each container \
            assessed anew as `/api/containers/{id}/assessment?on=&knownAt=` does; where it stood is then asked of that \
            day, while routes and the codes of customers are those of now. Of more than 20,000 containers (unless the \
            service is started with another number) it is refused with FLEET_TOO_LARGE.""";

    private final ScheduleRows rows;
    private final ScheduleQuestions questions;
    private final Replays replays;
    private final Clock clock;
    private final ScheduleWorkbook workbook;
    private final ScheduleCalendar calendar;
    private final MonthOnPaper paper;

    private final LongAnswers longAnswers;

    ScheduleController(ScheduleRows rows, ScheduleQuestions questions, Replays replays, Clock clock,
            ScheduleWorkbook workbook, ScheduleCalendar calendar, MonthOnPaper paper, LongAnswers longAnswers) {
        this.longAnswers = longAnswers;
        this.paper = paper;
        this.replays = replays;
        this.clock = clock;
        this.calendar = calendar;
        this.workbook = workbook;
        this.rows = rows;
        this.questions = questions;
    }

    /** One line of the schedule; months as YYYY-MM. */
    @Schema(name = "ScheduleLine")
    record Line(YearMonth due, LocalDate lastDay, String status, String requirement, @Nullable String jurisdiction,
            @Nullable String rule, UUID containerId, String kind, String specification, @Nullable String maker,
            String serial, @Nullable YearMonth manufactured, String size, @Nullable String tag, @Nullable String site,
            @Nullable String siteName, @Nullable String customer, @Nullable String owner, List<String> routes) {

        static Line from(ScheduleRow row) {
            return new Line(YearMonth.from(row.due()), row.lastDay(), row.status(), row.requirement(),
                    row.jurisdiction(), row.rule(), row.containerId(), row.kind(), row.specification(), row.maker(),
                    row.serial(), row.manufacturedIn(), row.size(), row.tag(), row.site(), row.siteName(),
                    row.customer(), row.owner(), row.routeCodes());
        }
    }

    @GetMapping(produces = "application/json")
    @Operation(summary = "What falls due, in pages ordered by month", description = TOLD)
    Page<Line> page(@ParameterObject ScheduleQuestion question, @ParameterObject ReplayQuestion then,
            @RequestParam(required = false) @Nullable String cursor,
            @Parameter(schema = @Schema(type = "integer", format = "int32")) @RequestParam(required = false) @Nullable String size,
            Inputs wrong) throws IOException {
        var filter = questions.read(question, wrong);
        var replay = then.read(clock.instant(), wrong);
        var asked = PageAsked.read(size, cursor, ScheduleController::after, wrong);
        wrong.done();
        var read = replays.read(filter, replay, source -> rows.page(source, filter, asked.after(), asked.size()));
        return Page.of(read, asked.size(),
                row -> Cursor.after(row.due(), row.containerId(), row.requirement(),
                        row.jurisdiction() == null ? "" : row.jurisdiction()))
                .map(lines -> lines.stream().map(Line::from).toList());
    }

    @GetMapping(produces = "text/csv")
    @Operation(summary = "The whole schedule as CSV (also by ?format=csv)", description = """
            `plain=true` is for machines: text as it is. Otherwise a cell that a spreadsheet would run as a formula has an \
            apostrophe before it.""")
    void csv(@ParameterObject ScheduleQuestion question, @ParameterObject ReplayQuestion then,
            @Parameter(schema = @Schema(type = "boolean")) @RequestParam(required = false) @Nullable String plain,
            Inputs wrong, HttpServletRequest request, HttpServletResponse response) throws IOException {
        var filter = questions.read(question, wrong);
        var replay = then.read(clock.instant(), wrong);
        var asIs = wrong.word("plain", plain, YesOrNo.class);
        wrong.done();
        longAnswers.send(request, () -> replays.read(filter, replay, source -> {
            response.setCharacterEncoding(StandardCharsets.UTF_8);
            return rows.write(source, filter, asIs == YesOrNo.TRUE, as("text/csv", "schedule.csv", response));
        }));
    }

    private enum YesOrNo {
        TRUE,
        FALSE
    }

    @GetMapping(produces = ScheduleWorkbook.TYPE)
    @Operation(summary = "The whole schedule as a workbook (also by ?format=xlsx)", description = """
            The columns of the CSV with real dates, a month as its last day; a further sheet has the caution, when the \
            register was read, the rule book and what was asked. `sheets=year` gives each year a sheet of its own.""")
    void xlsx(@ParameterObject ScheduleQuestion question, @ParameterObject ReplayQuestion then,
            @Parameter(schema = @Schema(type = "string", allowableValues = "year")) @RequestParam(required = false) @Nullable String sheets,
            Inputs wrong, HttpServletRequest request,
            HttpServletResponse response) throws IOException {
        var filter = questions.read(question, wrong);
        var replay = then.read(clock.instant(), wrong);
        var by = wrong.word("sheets", sheets, ScheduleWorkbook.Sheets.class);
        wrong.done();
        longAnswers.send(request,
                () -> replays.read(filter, replay, source -> workbook.write(source, filter, replay, by,
                        as(ScheduleWorkbook.TYPE, "schedule.xlsx", response))));
    }

    @GetMapping(produces = "application/pdf")
    @Operation(summary = "What falls due in one month, to print (also by ?format=pdf)", description = """
            By site, each rule with its citation once. The month is `month`, or `from` and `to` where they are the same. At \
            most 3,000 lines.""")
    void pdf(@ParameterObject ScheduleQuestion question, @ParameterObject ReplayQuestion then,
            @RequestParam(required = false) @Nullable String month, Caller caller, Inputs wrong,
            HttpServletResponse response) throws IOException {
        var ofMonth = question.ofMonth(month, wrong);
        var filter = questions.read(ofMonth, wrong);
        var replay = then.read(clock.instant(), wrong);
        wrong.done();
        var about = new MonthOnPaper.About(Objects.requireNonNull(filter.from()), replay,
                caller.id());
        replays.read(filter, replay, source -> paper.write(source, filter, about,
                () -> as("application/pdf", "schedule-" + about.month() + ".pdf", response)));
    }

    @GetMapping(produces = CalendarFile.TYPE)
    @Operation(summary = "The schedule as a calendar, an all-day event for each site and month (also by ?format=ics)", description = "An event stands on the last day of its month and counts what falls due at the site.")
    void calendar(@ParameterObject ScheduleQuestion question, Inputs wrong, HttpServletResponse response)
            throws IOException {
        var filter = questions.read(question, wrong);
        wrong.done();
        var events = calendar.events(Source.stored(clock.instant()), filter);
        calendar.write(events, as(CalendarFile.TYPE + ";charset=UTF-8", "schedule.ics", response));
    }

    private static OutputStream as(String type, String name, HttpServletResponse response) throws IOException {
        response.setContentType(type);
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"");
        return response.getOutputStream();
    }

    private static @Nullable Cursor after(@Nullable String text) {
        var cursor = Cursor.parse(text, 4);
        try {
            if (cursor != null) {
                WrittenTime.day(cursor.key().get(0));
                UUID.fromString(cursor.key().get(1));
            }
            return cursor;
        } catch (DateTimeException | IllegalArgumentException forged) {
            throw Cursor.refused(String.valueOf(text));
        }
    }
}
