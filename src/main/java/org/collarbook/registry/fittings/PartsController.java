package org.collarbook.registry.fittings;

import java.net.URI;
import java.time.Clock;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.registry.Containers;
import org.collarbook.registry.fittings.PartRequests.FittedRequest;
import org.collarbook.registry.fittings.PartRequests.RemovalRequest;
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
@RequestMapping(path = "/api/containers/{id}/parts", produces = "application/json")
@Tag(name = "Register")
class PartsController {

    private final Parts parts;
    private final Containers containers;
    private final Idempotency idempotency;
    private final Clock clock;

    PartsController(Parts parts, Containers containers, Idempotency idempotency, Clock clock) {
        this.parts = parts;
        this.containers = containers;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Record a valve, gauge or label fitted to a container", description = """
            The clock of a relief valve runs from the month stamped on the valve in place, the oldest where there are \
            several; what was recorded of valves before it was fitted counts no more. `replaces` takes another part out \
            on the same day. A valve with an overfilling prevention device in it is an `OVERFILL_PREVENTION_DEVICE`.""")
    ResponseEntity<?> fit(@PathVariable UUID id, @RequestBody FittedRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var fitted = request.read(clock);
        var path = "/api/containers/" + id + "/parts";
        return idempotency.once(key, caller.id(), "POST " + path, request, () -> ResponseEntity
                .created(URI.create(path)).body(PartResponse.from(parts.fit(id, fitted, request.replaces(), caller))));
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/{part}/removal")
    @Operation(summary = "Record that a part was taken out", description = """
            While a relief valve is out and none is in its place nothing may be filled, unless it was taken out \
            `forGood`, its opening closed.""")
    ResponseEntity<?> remove(@PathVariable UUID id, @PathVariable UUID part, @RequestBody RemovalRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var removal = request.read(clock);
        var path = "/api/containers/" + id + "/parts";
        return idempotency.once(key, caller.id(), "POST " + path + "/" + part + "/removal", request,
                () -> ResponseEntity.created(URI.create(path))
                        .body(PartResponse.from(parts.remove(id, part, removal, caller))));
    }

    @GetMapping
    @Operation(summary = "A container's parts, in place and taken out, the latest recorded first")
    Page<PartResponse> list(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        containers.require(id);
        var rows = PageSize.of(size);
        return Page.of(parts.of(id, Cursor.parseId(cursor), rows), rows, part -> Cursor.after(part.id()))
                .map(page -> page.stream().map(PartResponse::from).toList());
    }
}
