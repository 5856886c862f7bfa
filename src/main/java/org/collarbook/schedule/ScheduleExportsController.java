package org.collarbook.schedule;

import java.io.IOException;
import java.net.URI;
import java.time.Clock;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.jobs.JobStatus;
import org.collarbook.platform.jobs.Jobs;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.ServletWebRequest;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

@RestController
@RequestMapping("/api/schedule-exports")
@Tag(name = "Schedule")
class ScheduleExportsController {

    private final ScheduleExports exports;
    private final ExportFiles files;
    private final ScheduleQuestions questions;
    private final MakeExports make;
    private final Jobs jobs;
    private final Idempotency idempotency;
    private final Clock clock;

    ScheduleExportsController(ScheduleExports exports, ExportFiles files, ScheduleQuestions questions,
            MakeExports make, Jobs jobs, Idempotency idempotency, Clock clock) {
        this.exports = exports;
        this.files = files;
        this.questions = questions;
        this.make = make;
        this.jobs = jobs;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @PostMapping(produces = "application/json")
    @ApiResponse(responseCode = "202", description = "Accepted")
    @Operation(summary = "Have the schedule made into files, however large it is", description = """
            The files, and the one of what no month could be told of, are one snapshot of the register; the manifest has \
            its moment, the rule book's hash, and of each file its rows and SHA-256. Made in the background: follow \
            `Location`. The files are deleted after seven days, unless the service is started with another time; the keys \
            of their rows are kept for 400, so that a later export can tell by `since` what is new, changed and gone.""")
    ResponseEntity<?> export(@RequestBody ExportRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var answer = idempotency.once(key, caller.id(), "POST /api/schedule-exports", request, () -> {
            var export = exports.queue(request.read(questions, exports, clock.instant()), caller);
            return ResponseEntity.accepted().location(URI.create("/api/schedule-exports/" + export.id())).body(export);
        });
        jobs.start(make);
        return answer;
    }

    @GetMapping(produces = "application/json")
    @Operation(summary = "Exports by pages, the newest first")
    Page<ScheduleExport> list(@RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var rowsAPage = PageSize.of(size);
        return Page.of(exports.page(Cursor.parseNumber(cursor), rowsAPage), rowsAPage,
                export -> Cursor.after(export.number()));
    }

    @GetMapping(path = "/{id}", produces = "application/json")
    @Operation(summary = "An export, how far it is, and what its files are")
    ScheduleExport one(@PathVariable UUID id) {
        return exports.known(id);
    }

    @PostMapping(path = "/{id}/cancellation", produces = "application/json")
    @Operation(summary = "Cancel an export that is not yet made")
    ResponseEntity<?> cancel(@PathVariable UUID id,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        return idempotency.once(key, caller.id(), "POST /api/schedule-exports/" + id + "/cancellation", "",
                () -> ResponseEntity.ok(exports.cancel(id)));
    }

    @GetMapping(path = "/{id}/files/{name}", produces = {"text/csv", ScheduleWorkbook.TYPE, "text/calendar",
            "application/jsonl"})
    @ApiResponse(responseCode = "200", description = "The file")
    @ApiResponse(responseCode = "304", description = "Not changed since the ETag named in If-None-Match")
    @Operation(summary = "One file of an export that is done", description = "Its `ETag` is the SHA-256 of the manifest.")
    void file(@PathVariable UUID id, @PathVariable String name, HttpServletRequest request,
            HttpServletResponse response) throws IOException {
        var export = done(id);
        var file = Objects.requireNonNull(export.manifest()).files().stream().filter(one -> one.name().equals(name))
                .findFirst().orElseThrow(() -> Problem.notFound("file of this export").asException());
        if (new ServletWebRequest(request, response).checkNotModified("\"" + file.sha256() + "\"")) {
            return;
        }
        response.setContentType(file.mediaType());
        response.setContentLengthLong(file.bytes());
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + file.name() + "\"");
        try (var content = files.read(id, export.progress().attempt(), file)) {
            content.transferTo(response.getOutputStream());
        }
    }

    private ScheduleExport done(UUID id) {
        var export = exports.known(id);
        if (export.status() != JobStatus.DONE) {
            throw Problem.conflict("EXPORT_NOT_DONE", "Export " + export.number() + " is " + export.status()
                    + ": only one that is DONE has files.").asException();
        }
        if (export.filesDeleted() || !Objects.requireNonNull(export.expiresAt()).isAfter(clock.instant())) {
            throw Problem.of(HttpStatus.GONE, "EXPORT_EXPIRED", "The files of export " + export.number()
                    + " were deleted after " + export.expiresAt() + ": ask for another export.").asException();
        }
        return export;
    }
}
