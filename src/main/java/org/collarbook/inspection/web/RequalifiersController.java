package org.collarbook.inspection.web;

import java.net.URI;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.inspection.Requalifier;
import org.collarbook.inspection.Requalifiers;
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
@RequestMapping(path = "/api/requalifiers", produces = "application/json")
@Tag(name = "Requalification")
class RequalifiersController {

    private final Requalifiers requalifiers;
    private final Idempotency idempotency;

    RequalifiersController(Requalifiers requalifiers, Idempotency idempotency) {
        this.requalifiers = requalifiers;
        this.idempotency = idempotency;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Register a facility that requalifies or repairs, by its RIN and approval")
    ResponseEntity<?> register(@RequestBody RequalifierRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var facility = request.read();
        return idempotency.once(key, caller.id(), "POST /api/requalifiers", request, () -> {
            var registered = requalifiers.register(facility, caller);
            return answer(ResponseEntity.created(URI.create("/api/requalifiers/" + registered.id())), registered);
        });
    }

    @GetMapping("/{id}")
    @Operation(summary = "One requalifier")
    ResponseEntity<RequalifierResponse> one(@PathVariable UUID id) {
        return answer(ResponseEntity.ok(),
                requalifiers.find(id).orElseThrow(() -> Problem.notFound("requalifier").asException()));
    }

    @GetMapping
    @Operation(summary = "Requalifiers, by pages")
    Page<RequalifierResponse> list(@RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        return requalifiers.page(Cursor.parseId(cursor), PageSize.of(size))
                .map(rows -> rows.stream().map(RequalifierResponse::from).toList());
    }

    @PutMapping("/{id}")
    @Operation(summary = "Change a requalifier's name, RIN or approval", description = """
            Records that were made before keep the approval as it stood when they were recorded.""")
    ResponseEntity<RequalifierResponse> change(@PathVariable UUID id,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody RequalifierRequest request) {
        return answer(ResponseEntity.ok(), requalifiers.change(id, ifMatch, request.read()));
    }

    private static ResponseEntity<RequalifierResponse> answer(ResponseEntity.BodyBuilder to, Requalifier one) {
        return to.eTag(new Revision(one.version()).etag()).body(RequalifierResponse.from(one));
    }
}
