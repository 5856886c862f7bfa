package org.collarbook.inspection.web;

import java.net.URI;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.inspection.CorrectRequalification;
import org.collarbook.inspection.RecordRequalification;
import org.collarbook.inspection.RecordedTest;
import org.collarbook.inspection.RecordedTests;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Containers;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api", produces = "application/json")
@Tag(name = "Requalification")
class RequalificationsController {

    private final RecordRequalification recording;
    private final CorrectRequalification correcting;
    private final RecordedTests recorded;
    private final Containers containers;
    private final Idempotency idempotency;

    RequalificationsController(RecordRequalification recording, CorrectRequalification correcting,
            RecordedTests recorded, Containers containers, Idempotency idempotency) {
        this.recording = recording;
        this.correcting = correcting;
        this.recorded = recorded;
        this.containers = containers;
        this.idempotency = idempotency;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/containers/{id}/requalifications")
    @Operation(summary = "Record a completed inspection or test; the result is computed", description = """
            What is required depends on the method. The due month moves in the same transaction.""")
    ResponseEntity<?> record(@PathVariable UUID id, @RequestBody RequalificationRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        containers.require(id);
        var sheet = SheetReader.read(request, "");
        return idempotency.once(key, caller.id(), "POST /api/containers/" + id + "/requalifications", request,
                () -> created(recording.record(id, sheet, caller)));
    }

    @GetMapping("/containers/{id}/requalifications")
    @Operation(summary = "A container's inspections and tests, the newest first, by pages", description = """
            `all=true` shows those as well that were corrected, each with what took its place and why.""")
    Page<RequalificationResponse> list(@PathVariable UUID id, @RequestParam(defaultValue = "false") boolean all,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        containers.require(id);
        var rows = PageSize.of(size);
        var at = DayCursor.parse(cursor);
        var before = at == null ? null : new RecordedTests.Before(at.day(), at.id());
        return Page.of(recorded.of(id, all, before, rows), rows, one -> Cursor.after(one.day(), one.id()))
                .map(RequalificationResponse::from);
    }

    @GetMapping("/requalifications/{id}")
    @Operation(summary = "One inspection or test with its full contents; a corrected one says what took its place")
    RequalificationResponse one(@PathVariable UUID id) {
        return RequalificationResponse.from(find(id));
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/requalifications/{id}/corrections")
    @Operation(summary = "Correct a record that was a mistake; it stays, and another entry supersedes it", description = """
                    The answer is the entry that takes its place, or the entry itself where it is void. A condemnation \
                    is corrected by an administrator alone.""")
    ResponseEntity<?> correct(@PathVariable UUID id, @RequestBody CorrectionRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        find(id);
        var read = request.read();
        return idempotency.once(key, caller.id(), "POST /api/requalifications/" + id + "/corrections", request, () -> {
            var replacedBy = correcting.correct(id, read.instead(), read.reason(), caller);
            return created(replacedBy == null ? id : replacedBy);
        });
    }

    private ResponseEntity<RequalificationResponse> created(UUID id) {
        return ResponseEntity.created(URI.create("/api/requalifications/" + id))
                .body(RequalificationResponse.from(find(id)));
    }

    private RecordedTest find(UUID id) {
        return recorded.find(id).orElseThrow(() -> Problem.notFound("requalification").asException());
    }
}
