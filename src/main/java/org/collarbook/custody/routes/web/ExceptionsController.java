package org.collarbook.custody.routes.web;

import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.custody.routes.ExceptionKind;
import org.collarbook.custody.routes.Routes;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Revision;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import io.swagger.v3.oas.annotations.media.Schema;

@RestController
@RequestMapping(path = "/api/routes/{id}/exceptions/{day}", produces = "application/json")
@Tag(name = "Routes")
class ExceptionsController {

    private static final int LONGEST_REASON = 200;

    private final Routes routes;
    private final DepotDays depots;

    ExceptionsController(Routes routes, DepotDays depots) {
        this.routes = routes;
        this.depots = depots;
    }

    @Schema(requiredProperties = {"kind", "reason"})
    record ExceptionRequest(@Nullable String kind, @Nullable String reason) {}

    @PutMapping
    @Operation(summary = "Skip a visit of a route, or add one on another day", description = """
            It takes no `If-Match`: two people may except different days at once. The route gets a new version by it, \
            unless the same was said before; the answer is the route. What was said about the day before is replaced. \
            A day added is driven on a holiday, too.""")
    ResponseEntity<RouteResponse> except(@PathVariable UUID id, @PathVariable LocalDate day,
            @RequestBody ExceptionRequest request) {
        var inputs = new Inputs();
        Days.isWithin("day", day, inputs);
        var given = request.kind == null || request.kind.isBlank() ? null : request.kind;
        var kind = inputs.word("/kind", inputs.present("/kind", given, "SKIPPED or ADDED"), ExceptionKind.class);
        var reason = inputs.required("/reason", request.reason, LONGEST_REASON);
        inputs.done();
        if (kind == null || reason == null) {
            throw new IllegalStateException("an exception was neither read nor refused");
        }
        var route = routes.except(id, day, kind, reason);
        return ResponseEntity.ok().eTag(new Revision(route.version()).etag()).body(depots.told(route));
    }

    @ResponseStatus(HttpStatus.NO_CONTENT)
    @DeleteMapping
    @Operation(summary = "Take back what is said about a single day; the route gets a new version by it")
    ResponseEntity<Void> drop(@PathVariable UUID id, @PathVariable LocalDate day) {
        routes.dropException(id, day);
        return ResponseEntity.noContent().build();
    }
}
