package org.collarbook.compliance.transport;

import java.math.BigDecimal;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.registry.Containers;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Purpose;
import org.collarbook.regulation.Retention;
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
@RequestMapping(path = "/api/containers/{id}/transport-records", produces = "application/json")
@Tag(name = "Compliance")
class TransportsController {

    private final Transports transports;
    private final Containers containers;
    private final Retention retention;
    private final Idempotency idempotency;
    private final Clock clock;

    TransportsController(Transports transports, Containers containers, Retention retention, Idempotency idempotency,
            Clock clock) {
        this.transports = transports;
        this.containers = containers;
        this.retention = retention;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    /** Kept until {@code keepUntil} at least, as {@code kept} says. */
    record TransportResponse(UUID id, UUID containerId, LocalDate movedOn, BigDecimal percentFull, Purpose purpose,
            String from, String to, String carrier, LocalDate inspectedOn, String inspectedBy, boolean leakFree,
            boolean secured, @Nullable String findings, List<String> refusedFor, LocalDate keepUntil,
            @Nullable Citation kept, Instant recordedAt) {

        static TransportResponse from(Transport transport, @Nullable Citation kept) {
            var told = transport.told();
            return new TransportResponse(transport.id(), transport.containerId(), told.movedOn(), told.percentFull(),
                    told.purpose(), told.from(), told.to(), told.carrier(), told.inspectedOn(), told.inspectedBy(),
                    told.leakFree(), told.secured(), told.findings(), transport.refusedFor(), transport.keepUntil(),
                    kept, transport.recordedAt());
        }
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Record the move of a stationary tank by road", description = """
            49 CFR 173.315(j): judged by its size, how full it is and what the move is for, and by all that keeps it \
            where it is. What must not be is refused with `MOVE_REFUSED`, unless it `happened`: then it is a fact with \
            `refusedFor`. That a record is made of the inspection and kept for two years was read in the text; what is \
            asked for here of its content is from memory.""")
    ResponseEntity<?> record(@PathVariable UUID id, @RequestBody TransportRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var told = request.read(clock);
        var path = "/api/containers/" + id + "/transport-records";
        return idempotency.once(key, caller.id(), "POST " + path, request, () -> ResponseEntity
                .created(URI.create(path)).body(response(transports.record(id, told, caller))));
    }

    @GetMapping
    @Operation(summary = "The recorded moves of a stationary tank, the latest recorded first")
    Page<TransportResponse> list(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        containers.require(id);
        var rows = PageSize.of(size);
        return Page.of(transports.of(id, Cursor.parseId(cursor), rows), rows, one -> Cursor.after(one.id()))
                .map(page -> page.stream().map(this::response).toList());
    }

    private TransportResponse response(Transport transport) {
        return TransportResponse.from(transport, retention.of(Retention.RecordKind.TRANSPORT).citation());
    }
}
