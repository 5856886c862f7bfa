package org.collarbook.custody.web;

import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.DisputedPlace;
import org.collarbook.custody.PlaceDisputes;
import org.collarbook.custody.Places;
import org.collarbook.custody.Sighting;
import org.collarbook.custody.Sightings;
import org.collarbook.custody.Sightings.Seeing;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Containers;
import org.collarbook.registry.PlaceClaim;
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
class SightingsController {

    /**
     * {@code confirms}: the register had it there at that moment. {@code placeDisputed}: the places that claim the
     * container now, absent where only one does.
     */
    record RecordedSighting(UUID id, boolean confirms, @Nullable List<PlaceClaim> placeDisputed) {}

    record SightingResponse(UUID id, UUID containerId, UUID site, Instant occurredAt, Instant recordedAt) {

        static SightingResponse from(Sighting seen) {
            return new SightingResponse(seen.id(), seen.containerId(), seen.siteId(), seen.occurredAt(),
                    seen.recordedAt());
        }
    }

    private final Sightings sightings;
    private final PlaceDisputes disputes;
    private final Places places;
    private final Containers containers;
    private final Idempotency idempotency;
    private final Clock clock;

    SightingsController(Sightings sightings, PlaceDisputes disputes, Places places, Containers containers,
            Idempotency idempotency, Clock clock) {
        this.sightings = sightings;
        this.disputes = disputes;
        this.places = places;
        this.containers = containers;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/sightings")
    @Operation(summary = "Record that a container was seen standing at a site", description = """
            As by a stock count or a driver; it moves nothing. One seen elsewhere than recorded is in dispute, and both \
            places are told, until it is seen later at the recorded place, or moved. A movement may then start at either.""")
    ResponseEntity<?> record(@RequestBody SightingRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var told = request.read(clock.instant(), id -> places.site(id).isPresent());
        return idempotency.once(key, caller.id(), "POST /api/sightings", request,
                () -> switch (sightings.record(told.container(), told.site(), told.at(), caller)) {
                    case Seeing.Recorded(var id, var confirms) -> ResponseEntity
                            .created(URI.create("/api/containers/" + told.container() + "/sightings"))
                            .body(new RecordedSighting(id, confirms,
                                    disputes.of(List.of(told.container())).get(told.container())));
                    case Seeing.UnknownContainer() -> throw Problem.invalid("/containerId", "UNKNOWN_CONTAINER",
                            told.container().toString(), "the id of a container").asException();
                });
    }

    @GetMapping("/containers/{id}/sightings")
    @Operation(summary = "Where and when a container was seen, the latest first")
    Page<SightingResponse> of(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        if (containers.find(id).isEmpty()) {
            throw Problem.notFound("container").asException();
        }
        var rows = PageSize.of(size);
        var before = Before.parse(cursor);
        var read = before == null
                ? sightings.of(id, null, null, rows.limit())
                : sightings.of(id, before.occurredAt(), before.id(), rows.limit());
        return Page.of(read, rows, seen -> Cursor.after(seen.occurredAt(), seen.id()))
                .map(page -> page.stream().map(SightingResponse::from).toList());
    }

    @GetMapping("/place-disputes")
    @Operation(summary = "Containers that several places claim, by pages", description = """
            With `site` (an id) those that this site claims, recorded there or not. Of the claims, the recorded place \
            comes first, `since` it was moved there; another one claims it since it was first seen there.""")
    Page<DisputedPlace> disputes(@RequestParam(required = false) @Nullable UUID site,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var rows = PageSize.of(size);
        var after = Cursor.parseId(cursor);
        if (site != null && places.site(site).isEmpty()) {
            throw Problem.notFound("site").asException();
        }
        return disputes.page(site, after, rows);
    }
}
