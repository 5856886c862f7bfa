package org.collarbook.custody.web;

import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.Emptying;
import org.collarbook.custody.Emptyings;
import org.collarbook.custody.FillFlags;
import org.collarbook.custody.Fills;
import org.collarbook.custody.PastFill;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
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

/** What was in a container, and when it was empty. */
@RestController
@RequestMapping(path = "/api/containers/{id}", produces = "application/json")
@Tag(name = "Fills")
class ContentsController {

    record EmptyingResponse(UUID id, UUID containerId, Instant emptiedAt, LocalDate emptiedOn, @Nullable String how) {

        static EmptyingResponse from(Emptying emptying) {
            return new EmptyingResponse(emptying.id(), emptying.containerId(), emptying.emptiedAt(),
                    emptying.emptiedOn(), emptying.how());
        }
    }

    private final Emptyings emptyings;
    private final Fills fills;
    private final FillFlags flags;
    private final Containers containers;
    private final Idempotency idempotency;
    private final Clock clock;

    ContentsController(Emptyings emptyings, Fills fills, FillFlags flags, Containers containers,
            Idempotency idempotency, Clock clock) {
        this.flags = flags;
        this.emptyings = emptyings;
        this.fills = fills;
        this.containers = containers;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/emptyings")
    @Operation(summary = "Record that a container was found empty", description = """
            What was filled before it fell due may be used until it is empty; this ends that. A later fill ends this.""")
    ResponseEntity<?> emptied(@PathVariable UUID id, @RequestBody EmptyingRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var content = request.toContent(clock.instant());
        var path = "/api/containers/" + id + "/emptyings";
        return idempotency.once(key, caller.id(), "POST " + path, request,
                () -> ResponseEntity.created(URI.create(path)).body(EmptyingResponse
                        .from(emptyings.record(id, content.emptiedAt(), content.how(), caller))));
    }

    @GetMapping("/fills")
    @Operation(summary = "A container's fills, the latest first", description = """
            When a fact that is recorded later makes a fill one that was not allowed, the fill stays and is flagged with \
            the reasons; when a still later fact makes it lawful again, a further flag with no reasons says so.""")
    Page<FillResponse> fills(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        containers.require(id);
        var rows = PageSize.of(size);
        var read = fills.of(id, before(id, cursor), rows.limit());
        return Page.of(read, rows, fill -> Cursor.after(fill.id()))
                .map(this::withFlags);
    }

    private List<FillResponse> withFlags(List<PastFill> page) {
        var known = flags.of(page.stream().map(PastFill::id).toList());
        return page.stream().map(fill -> FillResponse.from(fill, known.getOrDefault(fill.id(), List.of()))).toList();
    }

    private @Nullable PastFill before(UUID container, @Nullable String cursor) {
        var last = Cursor.parseId(cursor);
        return last == null
                ? null
                : fills.find(last).filter(fill -> fill.containerId().equals(container))
                        .orElseThrow(() -> Cursor.refused(String.valueOf(cursor)));
    }
}
