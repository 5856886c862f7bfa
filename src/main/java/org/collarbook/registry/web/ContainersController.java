package org.collarbook.registry.web;

import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.collarbook.registry.Absorbed;
import org.collarbook.registry.Containers;
import org.collarbook.registry.PlaceClaims;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.registry.Registration;
import org.collarbook.registry.Serial;
import org.collarbook.registry.fittings.Stops;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
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
@RequestMapping(path = "/api/containers", produces = "application/json")
@Tag(name = "Register")
class ContainersController {

    private final Containers containers;
    private final Absorbed absorbed;
    private final Stops stops;
    private final PlaceClaims claims;
    private final Idempotency idempotency;
    private final Clock clock;

    ContainersController(Containers containers, Absorbed absorbed, Stops stops, PlaceClaims claims,
            Idempotency idempotency, Clock clock) {
        this.claims = claims;
        this.absorbed = absorbed;
        this.containers = containers;
        this.stops = stops;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Register a container by its marks as stamped")
    ResponseEntity<?> register(@RequestBody ContainerRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var content = request.toRegistration(LocalDate.now(clock));
        return idempotency.once(key, caller.id(), "POST /api/containers", request,
                () -> switch (containers.register(content, caller)) {
                    case Registration.Registered(var id) -> ResponseEntity
                            .created(URI.create("/api/containers/" + id)).eTag(new Revision(0).etag())
                            .body(ContainerResponse.from(known(id), null, null, null));
                    case Registration.Refused refused -> throw refused.problem().asException();
                });
    }

    @GetMapping("/{id}")
    @Operation(summary = "One container as it stands in the register", description = """
            With `placeDisputed` several places claim it. \
            With `mergedInto` the record is closed: it was found to be that other container, which counts.""")
    ResponseEntity<ContainerResponse> one(@PathVariable UUID id) {
        return answer(known(id));
    }

    @GetMapping
    @Operation(summary = "Containers by serial number or tag, or all, by pages")
    Page<ContainerResponse> list(@RequestParam(required = false) @Nullable String serial,
            @RequestParam(required = false) @Nullable String tag,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var page = containers.page(
                serial == null ? null : read("serial", "INVALID_SERIAL", serial, Serial.tryParse(serial)),
                tag == null
                        ? null
                        : read("tag", "INVALID_TAG", tag, org.collarbook.registry.Tag.tryParse(tag)),
                Cursor.parseId(cursor), PageSize.of(size));
        var ids = page.items().stream().map(RegisteredContainer::id).toList();
        var stopped = stops.standing(ids);
        var disputed = claims.of(ids);
        return page.map(rows -> rows.stream().map(one -> ContainerResponse.from(one, stopped.get(one.id()),
                disputed.get(one.id()), null)).toList());
    }

    @PutMapping("/{id}")
    @Operation(summary = "Correct what is recorded; every earlier value is kept with the reason")
    ResponseEntity<ContainerResponse> correct(@PathVariable UUID id,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody ContainerRequest request, Caller caller) {
        var content = request.toCorrection(LocalDate.now(clock));
        return answer(containers.correct(id, ifMatch, content, String.valueOf(request.reason()).strip(), caller));
    }

    private RegisteredContainer known(UUID id) {
        return containers.require(id);
    }

    private ResponseEntity<ContainerResponse> answer(RegisteredContainer container) {
        var stop = stops.standing(List.of(container.id())).get(container.id());
        var disputed = claims.of(List.of(container.id())).get(container.id());
        return ResponseEntity.ok().eTag(new Revision(container.version()).etag())
                .body(ContainerResponse.from(container, stop, disputed, absorbed.into(container.id()).orElse(null)));
    }

    private static <T> T read(String parameter, String code, String text, ParseResult<T> result) {
        return switch (result) {
            case Parsed<T>(var value, var _) -> value;
            case Rejected<T>(int _, var _, var expected) -> throw Problem.invalid(parameter, code, text, expected)
                    .asException();
        };
    }
}
