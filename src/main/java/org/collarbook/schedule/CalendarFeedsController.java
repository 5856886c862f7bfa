package org.collarbook.schedule;

import java.io.IOException;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.Guesses;
import org.collarbook.access.Rates;
import org.collarbook.platform.CalendarFile;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

@RestController
@Tag(name = "Schedule")
class CalendarFeedsController {

    private static final int LONGEST_NAME = 200;

    private final CalendarFeeds feeds;
    private final ScheduleQuestions questions;
    private final ScheduleCalendar calendar;
    private final Guesses guesses;
    private final Rates rates;
    private final Clock clock;

    CalendarFeedsController(CalendarFeeds feeds, ScheduleQuestions questions, ScheduleCalendar calendar,
            Guesses guesses, Rates rates, Clock clock) {
        this.guesses = guesses;
        this.rates = rates;
        this.clock = clock;
        this.feeds = feeds;
        this.questions = questions;
        this.calendar = calendar;
    }

    /** {@code filter} as the parameters of the schedule; absent is everything. */
    @Schema(name = "NewCalendarFeed", requiredProperties = "name")
    record NewFeed(@Nullable String name, @Nullable ScheduleQuestion filter) {}

    /** The address is in this one answer and nowhere else. */
    @Schema(name = "ShownCalendarFeed")
    record ShownFeed(UUID id, String url) {}

    @Schema(name = "CalendarFeedList")
    record FeedList(List<CalendarFeeds.Feed> items) {}

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping(path = "/api/calendar-feeds", produces = "application/json")
    @Operation(summary = "Open a calendar to subscribe to; its address is shown in this answer only", description = """
            Whoever has the address reads this calendar and nothing else, without a key, until it is revoked. As with keys \
            no Idempotency-Key is taken, since the first answer is not kept.""")
    ResponseEntity<ShownFeed> open(@RequestBody NewFeed request, Caller caller) {
        var wrong = new Inputs();
        var name = wrong.required("/name", request.name(), LONGEST_NAME);
        var filter = request.filter() == null
                ? ScheduleFilter.EVERYTHING
                : questions.ofBody(request.filter(), wrong);
        wrong.done();
        var token = FeedToken.generate();
        var id = feeds.open(Objects.requireNonNull(name), filter, token, caller.id());
        return ResponseEntity.created(URI.create("/api/calendar-feeds/" + id)).body(new ShownFeed(id,
                ServletUriComponentsBuilder.fromCurrentContextPath().path("/calendars/" + token.text() + ".ics")
                        .toUriString()));
    }

    @GetMapping(path = "/api/calendar-feeds", produces = "application/json")
    @Operation(summary = "The calendars that were opened, without their addresses")
    FeedList list() {
        return new FeedList(feeds.all());
    }

    @ResponseStatus(HttpStatus.NO_CONTENT)
    @DeleteMapping("/api/calendar-feeds/{id}")
    @Operation(summary = "Revoke a calendar's address at once")
    ResponseEntity<Void> revoke(@PathVariable UUID id) {
        feeds.revoke(id);
        return ResponseEntity.noContent().build();
    }

    @GetMapping(path = "/calendars/{token}.ics", produces = CalendarFile.TYPE)
    @Operation(summary = "A calendar that was subscribed to, opened by the token in its address")
    void read(@PathVariable String token, HttpServletRequest request, HttpServletResponse response) throws IOException {
        var opened = guesses.open(token, request, response, given -> FeedToken.parse(given).flatMap(feeds::find))
                .orElseThrow(() -> Problem.notFound("calendar").asException());
        rates.takeForCalendar(opened.id(), response);
        var wrong = new Inputs();
        var filter = questions.read(opened.filter(), wrong);
        wrong.done();
        var events = calendar.events(Source.stored(clock.instant()), filter);
        response.setContentType(CalendarFile.TYPE + ";charset=UTF-8");
        calendar.write(events, response.getOutputStream());
    }
}
