package org.collarbook.custody.web;

import java.net.URI;
import java.time.Clock;
import java.time.YearMonth;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.Extinguishers;
import org.collarbook.custody.Place;
import org.collarbook.custody.Places;
import org.collarbook.custody.StandingExtinguisher;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
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
@RequestMapping(path = "/api/sites/{id}/extinguishers", produces = "application/json")
@Tag(name = "Places")
class ExtinguishersController {

    private final Extinguishers extinguishers;
    private final Places places;
    private final Idempotency idempotency;
    private final Clock clock;

    ExtinguishersController(Extinguishers extinguishers, Places places, Idempotency idempotency, Clock clock) {
        this.extinguishers = extinguishers;
        this.places = places;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @GetMapping
    @Operation(summary = "The fire extinguishers at a site with what was done to each, by pages", description = """
            `removed=true` tells those as well that were removed.""")
    Page<ExtinguisherResponse> list(@PathVariable UUID id,
            @RequestParam(defaultValue = "false") boolean removed,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        site(id);
        var rows = PageSize.of(size);
        return Page.of(extinguishers.at(id, removed, Cursor.parseId(cursor), rows), rows,
                one -> Cursor.after(one.id())).map(page -> page.stream().map(ExtinguisherResponse::from).toList());
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Record a fire extinguisher that stands at a site")
    ResponseEntity<?> add(@PathVariable UUID id, @RequestBody ExtinguisherRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var found = request.at(id, thisMonth(site(id)));
        var path = "/api/sites/" + id + "/extinguishers";
        return idempotency.once(key, caller.id(), "POST " + path, request, () -> ResponseEntity
                .created(URI.create(path)).body(ExtinguisherResponse.from(extinguishers.add(found, caller))));
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/{extinguisherId}/records")
    @Operation(summary = "Record an inspection, maintenance, emptying or pressure test of a fire extinguisher")
    ResponseEntity<?> record(@PathVariable UUID id, @PathVariable UUID extinguisherId,
            @RequestBody ExtinguisherRecordRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var month = thisMonth(site(id));
        var at = find(id, extinguisherId);
        var done = request.read(month, at.about().manufactured());
        var path = "/api/sites/" + id + "/extinguishers";
        return idempotency.once(key, caller.id(), "POST " + path + "/" + extinguisherId + "/records", request,
                () -> ResponseEntity.created(URI.create(path)).body(ExtinguisherResponse.from(
                        extinguishers.record(at, done.month(), done.method(), done.by(), caller))));
    }

    @ResponseStatus(HttpStatus.NO_CONTENT)
    @DeleteMapping("/{extinguisherId}")
    @Operation(summary = "Record that a fire extinguisher was removed from the site; its history stays")
    ResponseEntity<Void> remove(@PathVariable UUID id, @PathVariable UUID extinguisherId, Caller caller) {
        extinguishers.remove(find(id, extinguisherId), caller);
        return ResponseEntity.noContent().build();
    }

    private Place site(UUID id) {
        return places.site(id).orElseThrow(() -> Problem.notFound("site").asException());
    }

    private StandingExtinguisher find(UUID site, UUID id) {
        return extinguishers.find(site, id).orElseThrow(() -> Problem.notFound("extinguisher").asException());
    }

    /** The month it is at the site. */
    private YearMonth thisMonth(Place site) {
        return YearMonth.now(clock.withZone(site.zone()));
    }
}
