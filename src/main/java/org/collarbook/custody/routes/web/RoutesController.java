package org.collarbook.custody.routes.web;

import java.net.URI;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.Places;
import org.collarbook.custody.routes.Route;
import org.collarbook.custody.routes.Routes;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/routes", produces = "application/json")
@Tag(name = "Routes")
class RoutesController {

    private final Routes routes;
    private final Places places;
    private final DepotDays depots;
    private final Idempotency idempotency;

    RoutesController(Routes routes, Places places, DepotDays depots, Idempotency idempotency) {
        this.routes = routes;
        this.places = places;
        this.depots = depots;
        this.idempotency = idempotency;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Open a route: a depot, its days and its stops in their order", description = """
            The days are those that match `visits.rule` (RFC 5545, 3.3.10) from `visits.from` on; every `INTERVAL` is \
            counted from that day, which is a visit itself only if it matches. Less the holidays, unless \
            `onHolidays`. `vehicle` null: not told.""")
    ResponseEntity<?> open(@RequestBody RouteRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var content = request.toContent(places::sites);
        return idempotency.once(key, caller.id(), "POST /api/routes", request, () -> {
            var route = routes.open(content);
            return answer(ResponseEntity.created(URI.create("/api/routes/" + route.id())), route);
        });
    }

    @GetMapping("/{id}")
    @Operation(summary = "One route, with its exceptions and its next two visits")
    ResponseEntity<RouteResponse> one(@PathVariable UUID id) {
        return answer(ResponseEntity.ok(), routes.find(id).orElseThrow(() -> Problem.notFound("route").asException()));
    }

    @GetMapping
    @Operation(summary = "Routes, by pages")
    Page<RouteResponse> list(@RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        return routes.page(Cursor.parseId(cursor), PageSize.of(size)).map(depots::told);
    }

    @PutMapping("/{id}")
    @Operation(summary = "Change a route; what is said about single days stays")
    ResponseEntity<RouteResponse> change(@PathVariable UUID id,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody RouteRequest request) {
        return answer(ResponseEntity.ok(), routes.change(id, ifMatch, request.toContent(places::sites)));
    }

    private ResponseEntity<RouteResponse> answer(ResponseEntity.BodyBuilder to, Route route) {
        return to.eTag(new Revision(route.version()).etag()).body(depots.told(route));
    }
}
