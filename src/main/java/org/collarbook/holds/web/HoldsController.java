package org.collarbook.holds.web;

import java.net.URI;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.holds.Hold;
import org.collarbook.holds.HoldReason;
import org.collarbook.holds.Holds;
import org.collarbook.holds.Placing;
import org.collarbook.holds.web.HoldResponse.PlacedHold;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Containers;
import org.collarbook.regulation.ContainerKind;
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
@Tag(name = "Holds")
class HoldsController {

    private final Holds holds;
    private final Containers containers;
    private final Idempotency idempotency;
    private final Clock clock;

    HoldsController(Holds holds, Containers containers, Idempotency idempotency, Clock clock) {
        this.holds = holds;
        this.containers = containers;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @GetMapping("/holds/reasons")
    @Operation(summary = "Why a container may be held, where that stands, and what lifts it")
    List<HoldReasonAnswer> reasons() {
        return Arrays.stream(HoldReason.values()).map(HoldReasonAnswer::from).toList();
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/containers/{id}/holds")
    @Operation(summary = "Hold a container out of service", description = """
            It stands beside any other hold until it is lifted. `occurredAt` is now when absent. A 4E cylinder that was \
            in a fire is condemned instead, which nothing lifts: `outcome` tells which.""")
    ResponseEntity<?> place(@PathVariable UUID id, @RequestBody HoldRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var read = request.read(clock.instant());
        var path = "/api/containers/" + id + "/holds";
        return idempotency.once(key, caller.id(), "POST " + path, request,
                () -> ResponseEntity.created(URI.create(path)).body(answer(
                        holds.place(id, read.reason(), read.note(), read.occurredAt(), caller))));
    }

    private PlacedHold answer(Placing placing) {
        return switch (placing) {
            case Placing.Placed(var hold) -> PlacedHold.held(response(hold, kind(hold.containerId())));
            case Placing.Condemned condemned -> PlacedHold.condemned(condemned);
            case Placing.AlreadyCondemned() ->
                throw Problem.conflict("CONTAINER_CONDEMNED", "This container is condemned"
                        + " and out of service for good: a hold would say less. Nothing was stored.").asException();
            case Placing.UnknownContainer() -> throw Problem.notFound("container").asException();
        };
    }

    @GetMapping("/containers/{id}/holds")
    @Operation(summary = "A container's holds, standing and lifted, the latest first", description = """
            `standing=true` tells those only that are not lifted.""")
    Page<HoldResponse> of(@PathVariable UUID id, @RequestParam(defaultValue = "false") boolean standing,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var kind = kind(id);
        var rows = PageSize.of(size);
        return Page.of(holds.of(id, standing, Cursor.parseId(cursor), rows), rows, hold -> Cursor.after(hold.id()))
                .map(page -> page.stream().map(hold -> response(hold, kind)).toList());
    }

    private static HoldResponse response(Hold hold, ContainerKind kind) {
        return HoldResponse.from(hold, hold.reason().liftedBy(kind));
    }

    private ContainerKind kind(UUID id) {
        return containers.find(id).map(container -> container.marks().kind())
                .orElseThrow(() -> Problem.notFound("container").asException());
    }
}
