package org.collarbook.custody.web;

import java.net.URI;
import java.time.Clock;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.Movements;
import org.collarbook.custody.Moving;
import org.collarbook.custody.NewMovement;
import org.collarbook.custody.Places;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
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
@Tag(name = "Places")
class MovementsController {

    /**
     * {@code moved} is false when another movement decides: a later one, or one of the same moment that was recorded
     * first. {@code disputed}: several places claim the container now.
     */
    record RecordedMovement(UUID id, boolean moved, boolean disputed) {}

    private final Movements movements;
    private final Places places;
    private final Containers containers;
    private final Idempotency idempotency;
    private final Clock clock;

    MovementsController(Movements movements, Places places, Containers containers, Idempotency idempotency,
            Clock clock) {
        this.movements = movements;
        this.places = places;
        this.containers = containers;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/movements")
    @Operation(summary = "Record that a container changed site")
    ResponseEntity<?> record(@RequestBody MovementRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var movement = request.toMovement(clock.instant(), id -> places.site(id).isPresent());
        return idempotency.once(key, caller.id(), "POST /api/movements", request,
                () -> switch (movements.record(movement, caller)) {
                    case Moving.Recorded(var id, var moved, var disputed) -> ResponseEntity
                            .created(URI.create("/api/containers/" + movement.containerId() + "/movements"))
                            .body(new RecordedMovement(id, moved, disputed));
                    case Moving.Disputed disputed -> throw disputed(disputed, movement);
                    case Moving.UnknownContainer() -> throw Problem.invalid("/containerId", "UNKNOWN_CONTAINER",
                            movement.containerId().toString(), "the id of a container").asException();
                });
    }

    private ProblemException disputed(Moving.Disputed disputed, NewMovement movement) {
        return Problem.conflict("PLACE_DISPUTED", "The register has container " + movement.containerId() + " at site "
                + disputed.recordedSite() + " at that time, not at " + disputed.statedSite()
                + ". Nothing was stored: look at the container, record the movement that is missing, then this one.")
                .with("recordedSite", site(disputed.recordedSite())).with("statedSite", site(disputed.statedSite()))
                .asException();
    }

    private SiteResponse site(UUID id) {
        return SiteResponse.from(places.site(id).orElseThrow());
    }

    @GetMapping("/containers/{id}/movements")
    @Operation(summary = "A container's movements, the latest first")
    Page<MovementResponse> of(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        containers.require(id);
        var rows = PageSize.of(size);
        var before = Before.parse(cursor);
        var read = before == null
                ? movements.of(id, null, null, rows.limit())
                : movements.of(id, before.occurredAt(), before.id(), rows.limit());
        return Page.of(read, rows, movement -> Cursor.after(movement.occurredAt(), movement.id()))
                .map(page -> page.stream().map(MovementResponse::from).toList());
    }
}
