package org.collarbook.registry.fittings;

import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
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

import io.swagger.v3.oas.annotations.media.Schema;

@RestController
@RequestMapping(path = "/api/containers/{id}/out-of-service", produces = "application/json")
@Tag(name = "Register")
class StopsController {

    private final Stops stops;
    private final Containers containers;
    private final Idempotency idempotency;
    private final Clock clock;

    StopsController(Stops stops, Containers containers, Idempotency idempotency, Clock clock) {
        this.stops = stops;
        this.containers = containers;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @Schema(requiredProperties = {"since", "reason"})
    record OutOfServiceRequest(@Nullable LocalDate since, @Nullable String reason) {}

    @Schema(requiredProperties = "returnedOn")
    record ReturnRequest(@Nullable LocalDate returnedOn, @Nullable String note) {}

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Take a tank out of service", description = """
            Nothing is put into it until its return is recorded. A cargo tank that was out for a year is pressure tested \
            before further use, 49 CFR 180.407(b)(3), also after its return. A cylinder is held by a hold instead.""")
    ResponseEntity<?> take(@PathVariable UUID id, @RequestBody OutOfServiceRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var inputs = new Inputs();
        var since = PartRequests.day("/since", request.since(), clock, inputs);
        var reason = inputs.required("/reason", request.reason(), 500);
        inputs.done();
        if (since == null || reason == null) {
            throw new IllegalStateException("a stop was neither read nor refused");
        }
        var path = "/api/containers/" + id + "/out-of-service";
        return idempotency.once(key, caller.id(), "POST " + path, request, () -> ResponseEntity
                .created(URI.create(path)).body(stops.take(id, since, reason, caller)));
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/return")
    @Operation(summary = "Put a tank back into service")
    ResponseEntity<?> putBack(@PathVariable UUID id, @RequestBody ReturnRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var inputs = new Inputs();
        var day = PartRequests.day("/returnedOn", request.returnedOn(), clock, inputs);
        var note = inputs.optional("/note", request.note(), 500);
        inputs.done();
        if (day == null) {
            throw new IllegalStateException("a return was neither read nor refused");
        }
        var path = "/api/containers/" + id + "/out-of-service";
        return idempotency.once(key, caller.id(), "POST " + path + "/return", request, () -> ResponseEntity
                .created(URI.create(path)).body(stops.putBack(id, day, note, caller)));
    }

    @GetMapping
    @Operation(summary = "When a tank was out of service, the latest recorded first")
    Page<Stop> list(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        containers.require(id);
        var rows = PageSize.of(size);
        return Page.of(stops.of(id, Cursor.parseId(cursor), rows), rows, stop -> Cursor.after(stop.id()));
    }
}
