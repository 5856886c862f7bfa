package org.collarbook.custody.web;

import java.math.BigDecimal;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.GaugeReading;
import org.collarbook.custody.GaugeReadings;
import org.collarbook.custody.ReadingSource;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.registry.Containers;
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
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api", produces = "application/json")
@Tag(name = "Gauge readings")
class ReadingsController {

    /** {@code repeated}: it was delivered before, and nothing was recorded again. */
    record RecordedReading(ReadingResponse reading, boolean repeated) {}

    record ReadingResponse(UUID id, UUID containerId, BigDecimal percent, Instant takenAt, LocalDate takenOn,
            ReadingSource source, @Nullable UUID site, Instant recordedAt) {

        static ReadingResponse from(GaugeReading shown) {
            return new ReadingResponse(shown.id(), shown.containerId(), shown.percent(), shown.gaugedAt(),
                    shown.gaugedOn(), shown.source(), shown.siteId(), shown.recordedAt());
        }
    }

    private final GaugeReadings readings;
    private final Containers containers;
    private final Idempotency idempotency;
    private final Clock clock;

    ReadingsController(GaugeReadings readings, Containers containers, Idempotency idempotency, Clock clock) {
        this.readings = readings;
        this.containers = containers;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ApiResponse(responseCode = "201", description = "Recorded", useReturnTypeSchema = true)
    @ApiResponse(responseCode = "200", description = "A repeat: it was recorded before", useReturnTypeSchema = true)
    @PostMapping("/readings")
    @Operation(summary = "Record what the gauge of a tank showed, in percent", description = """
            The tank by `containerId` or `tag`; `source` is READ_BY_PERSON or TELEMETRY. One delivered again is answered \
            with the first, `repeated`. It is kept and told, and decides nothing: a gauge is never a reason to fill.""")
    ResponseEntity<?> record(@RequestBody ReadingRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var told = request.read(clock.instant(),
                tag -> Optional.ofNullable(containers.byTags(List.of(tag)).get(tag)));
        return idempotency.once(key, caller.id(), "POST /api/readings", request, () -> {
            var done = readings.record(told.container(), told.percent(), told.at(), told.source(), caller);
            var body = new RecordedReading(ReadingResponse.from(done.reading()), done.repeated());
            return done.repeated()
                    ? ResponseEntity.ok(body)
                    : ResponseEntity.created(URI.create("/api/containers/" + told.container() + "/readings"))
                            .body(body);
        });
    }

    @GetMapping("/containers/{id}/readings")
    @Operation(summary = "What the gauge of a tank showed, the latest first")
    Page<ReadingResponse> of(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        containers.require(id);
        var rows = PageSize.of(size);
        var before = Before.parse(cursor);
        var read = before == null
                ? readings.of(id, null, null, rows.limit())
                : readings.of(id, before.occurredAt(), before.id(), rows.limit());
        return Page.of(read, rows, shown -> Cursor.after(shown.gaugedAt(), shown.id()))
                .map(page -> page.stream().map(ReadingResponse::from).toList());
    }
}
