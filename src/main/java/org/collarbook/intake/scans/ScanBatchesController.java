package org.collarbook.intake.scans;

import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.intake.scans.LineAnswer.Outcome;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
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
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

@RestController
@RequestMapping(path = "/api/scan-batches", produces = "application/json")
@Tag(name = "Scan batches")
class ScanBatchesController {

    /** A page of what became of a batch's lines. */
    record StoredBatch(UUID id, String batchId, Instant receivedAt, StoredCounts counts,
            @ArraySchema(schema = @Schema(implementation = LineAnswer.class)) List<JsonNode> items,
            @Nullable String next) {

        record StoredCounts(long recorded, long recordedNotAllowed, long refused) {}
    }

    private final ScanBatches batches;
    private final ScanLines lines;
    private final JsonMapper json;

    ScanBatchesController(ScanBatches batches, ScanLines lines, JsonMapper json) {
        this.batches = batches;
        this.lines = lines;
        this.json = json;
    }

    @PostMapping
    @ApiResponse(responseCode = "201", description = "Settled", useReturnTypeSchema = true)
    @ApiResponse(responseCode = "200", description = "A repeat, answered as before", useReturnTypeSchema = true)
    @Operation(summary = "Send what a depot scanned while it was offline", description = """
            Needs an `Idempotency-Key`. Up to 10,000 movements, returns, fills, holds, sightings and swaps, each with an `id` \
            of its own among all lines sent with this key, and \
            `occurredAt` and the fields of its kind; settled in the order in which they happened, answered in the order \
            in which they were sent. A line that is refused stops no other, and may be sent again under its id; one that \
            has recorded something records nothing again (`REPEATED`). A fill that was not allowed has happened all the \
            same: it is recorded with its reasons and puts a hold on the container (`RECORDED_NOT_ALLOWED`); so is a swap that left a \
            container which must not be used there. Lines are \
            kept piece by piece: after a lost answer, send the same batch again.""")
    ResponseEntity<ScanBatchAnswer> send(@RequestBody ScanBatchRequest request,
            @Parameter(required = true) @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key,
            Caller caller) {
        var taken = batches.take(request, key, caller);
        var at = URI.create("/api/scan-batches/" + taken.answer().id());
        var answer = taken.fresh() ? ResponseEntity.created(at) : ResponseEntity.ok().location(at);
        if (taken.answer().replays()) {
            answer.header("Idempotent-Replay", "true");
        }
        return answer.body(taken.answer());
    }

    @GetMapping("/{id}")
    @Operation(summary = "What became of the lines of a batch, in the order in which they were sent", description = """
            `id` is the one that the answer bore, or the `batchId` under which the caller sent it. Told is what each \
            line recorded, or why it was refused last.""")
    StoredBatch stored(@PathVariable String id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size, Caller caller) {
        var batch = lines.find(id, caller.id()).orElseThrow(() -> Problem.notFound("scan batch").asException());
        var rows = PageSize.of(size);
        var after = After.parse(cursor);
        var page = Page.of(lines.page(batch.id(), after == null ? null : after.position,
                after == null ? null : after.id, rows), rows, line -> Cursor.after(line.position(), line.id()));
        var counts = lines.counts(batch.id());
        return new StoredBatch(batch.id(), batch.name(), batch.receivedAt(),
                new StoredBatch.StoredCounts(counts.getOrDefault(Outcome.RECORDED.name(), 0L),
                        counts.getOrDefault(Outcome.RECORDED_NOT_ALLOWED.name(), 0L),
                        counts.getOrDefault(Outcome.REFUSED.name(), 0L)),
                page.items().stream().map(line -> json.readTree(line.answer())).toList(), page.next());
    }

    private record After(int position, UUID id) {

        static @Nullable After parse(@Nullable String text) {
            var cursor = Cursor.parse(text, 2);
            try {
                return cursor == null
                        ? null
                        : new After(Integer.parseInt(cursor.key().getFirst()),
                                UUID.fromString(cursor.key().getLast()));
            } catch (IllegalArgumentException foreign) {
                throw Cursor.refused(String.valueOf(text));
            }
        }
    }
}
