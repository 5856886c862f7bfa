package org.collarbook.compliance.swaps;

import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.compliance.fillcheck.ContainerFinder;
import org.collarbook.compliance.fillcheck.WhichContainer;
import org.collarbook.custody.Places;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.collarbook.registry.Tags;
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
class SwapsController {

    private final RecordSwap recordSwap;
    private final Swaps swaps;
    private final StopReader stops;
    private final ContainerFinder finder;
    private final Tags tags;
    private final Places places;
    private final Idempotency idempotency;
    private final Clock clock;

    SwapsController(RecordSwap recordSwap, Swaps swaps, StopReader stops, ContainerFinder finder, Tags tags,
            Places places, Idempotency idempotency, Clock clock) {
        this.recordSwap = recordSwap;
        this.swaps = swaps;
        this.stops = stops;
        this.finder = finder;
        this.tags = tags;
        this.places = places;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/swaps")
    @Operation(summary = "Record that a container was taken away at a site and another one left", description = """
            `out` went from the `site` onto the `vehicle` (a site of the kind VEHICLE, or a depot), `in` came from it; \
            one of the two may be absent. Each is named by `containerId`, or by `tag`, or by `serial` with as much of \
            `specification` and `maker` as was read. Both movements are recorded, or neither: one that the register has \
            elsewhere is refused with `PLACE_DISPUTED`, and one that must not be used at the site that day with \
            `REPLACEMENT_NOT_ALLOWED`, unless it `happened`: then it is a fact, answered with its `reasons`. `told` has \
            what refuses nothing: another size, or a last day before the site's visit after next.""")
    ResponseEntity<?> record(@RequestBody SwapRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var read = request.read(stops, clock.instant());
        return idempotency.once(key, caller.id(), "POST /api/swaps", request, () -> {
            var command = new SwapCommand(read.stop().site(), read.stop().vehicle(),
                    found("/out", request.out(), read.out(), read.at()), found("/in", request.in(), read.in(),
                            read.at()),
                    read.at(), request.isFact());
            return ResponseEntity.created(URI.create("/api/sites/" + read.stop().site().siteId() + "/swaps"))
                    .body(SwapAnswer.from(recordSwap.record(command, caller)));
        });
    }

    private @Nullable UUID found(String pointer, @Nullable NamedContainer named, @Nullable WhichContainer marks,
            Instant at) {
        if (marks == null) {
            return named == null ? null : named.containerId();
        }
        try {
            if (marks.tag() != null) {
                tags.refuseMovedSince(marks.tag(), at);
            }
            return finder.one(marks).id();
        } catch (ProblemException refused) {
            throw refused.problem().with("pointer", pointer).asException();
        }
    }

    @GetMapping("/sites/{id}/swaps")
    @Operation(summary = "What was taken away and left at a site, the latest recorded first")
    Page<Swaps.Swap> at(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        if (places.site(id).isEmpty()) {
            throw Problem.notFound("site").asException();
        }
        var rows = PageSize.of(size);
        return Page.of(swaps.at(id, Cursor.parseId(cursor), rows), rows, swap -> Cursor.after(swap.id()));
    }
}
