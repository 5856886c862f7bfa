package org.collarbook.portal.notices;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/notice-subscriptions/{id}", produces = "application/json")
@Tag(name = "Notices")
class NoticesController {

    private final NoticeLog log;
    private final Subscriptions subscriptions;
    private final Idempotency idempotency;
    private final Clock clock;

    NoticesController(NoticeLog log, Subscriptions subscriptions, Idempotency idempotency, Clock clock) {
        this.log = log;
        this.subscriptions = subscriptions;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @Schema(name = "LoggedNoticePage")
    record NoticePage(List<NoticeLog.Logged> items, @Nullable String next) {}

    @Schema(name = "NoticeAttemptPage")
    record AttemptPage(List<NoticeLog.Tried> items, @Nullable String next) {}

    /** The id of the notice that is sent. */
    @Schema(name = "TestedNotice")
    record Tested(UUID noticeId) {}

    /** Either a notice, or all that occurred since a moment. */
    @Schema(name = "NoticeReplay")
    record Replay(@Nullable UUID noticeId, @Nullable Instant since) {

        void check(Instant now) {
            var wrong = new Inputs();
            if ((noticeId == null) == (since == null)) {
                wrong.refuse("/noticeId", noticeId == null ? "MISSING" : "TOLD_TWICE", null,
                        "either noticeId or since");
            } else if (since != null && since.isAfter(now)) {
                wrong.refuse("/since", "IN_THE_FUTURE", since.toString(), "not after now, " + now);
            }
            wrong.done();
        }
    }

    @Schema(name = "ReplayedNotices")
    record Replayed(int replayed) {}

    @GetMapping("/notices")
    @Operation(summary = "The notices of the last ninety days, the latest first, with their bodies as sent")
    @ApiResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = NoticePage.class)))
    Page<NoticeLog.Logged> notices(@PathVariable UUID id,
            @RequestParam(required = false) NoticeLog.@Nullable Status status,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size, CustomerScope scope) {
        var asked = PageSize.of(size);
        return Page.of(log.notices(id, status, Cursor.parseNumber(cursor), asked, scope), asked,
                notice -> Cursor.after(notice.number()));
    }

    @GetMapping("/attempts")
    @Operation(summary = "Each attempt to send a notice, the latest first: when, what was answered, how long, what failed")
    @ApiResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = AttemptPage.class)))
    Page<NoticeLog.Tried> attempts(@PathVariable UUID id, @RequestParam(required = false) @Nullable UUID notice,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size, CustomerScope scope) {
        var asked = PageSize.of(size);
        return Page.of(log.attempts(id, notice, Cursor.parseNumber(cursor), asked, scope), asked,
                attempt -> Cursor.after(attempt.number()));
    }

    @PostMapping("/test")
    @Operation(summary = "Send a notice of the type endpoint.test, of no container")
    @ApiResponse(responseCode = "202", description = "It is sent at once", content = @Content(schema = @Schema(implementation = Tested.class)))
    ResponseEntity<?> test(@PathVariable UUID id,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        return idempotency.once(key, caller.id(), "POST /api/notice-subscriptions/" + id + "/test", "",
                () -> ResponseEntity.accepted().body(new Tested(subscriptions.test(id, caller.scope()))));
    }

    @PostMapping("/replays")
    @Operation(summary = "Send notices anew, with their ids and bodies of before: one, or all since a moment")
    @ApiResponse(responseCode = "202", description = "They wait to be sent", content = @Content(schema = @Schema(implementation = Replayed.class)))
    ResponseEntity<?> replay(@PathVariable UUID id, @RequestBody Replay request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        request.check(clock.instant());
        return idempotency.once(key, caller.id(), "POST /api/notice-subscriptions/" + id + "/replays", request,
                () -> ResponseEntity.accepted().body(new Replayed(
                        log.replay(id, request.noticeId(), request.since(), caller.scope()))));
    }
}
