package org.collarbook.registry.web;

import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Problem;
import org.collarbook.registry.IdentityAct;
import org.collarbook.registry.IdentityActs;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api", produces = "application/json")
@Tag(name = "Identity")
class IdentityActsController {

    private final IdentityActs acts;
    private final Idempotency idempotency;
    private final Clock clock;

    IdentityActsController(IdentityActs acts, Idempotency idempotency, Clock clock) {
        this.acts = acts;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/containers/{id}/merges")
    @Operation(summary = "Merge another record of the same container into this one", description = """
            All facts of both count for this one from then on, holds and condemnations among them; the other one is \
            closed and leads here. What the other one says otherwise must be named in `setAside`. Where a fill would be \
            allowed that was refused for one of them before, `fillWillBeAllowed` must say that this was seen.""")
    ResponseEntity<?> merge(@PathVariable UUID id, @RequestBody MergeRequest request,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var read = request.read();
        return idempotency.once(key, caller.id(), "POST /api/containers/" + id + "/merges", request,
                () -> created(acts.merge(id, ifMatch, read.absorbed(), read.setAside(), read.said(), caller)));
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/containers/{id}/splits")
    @Operation(summary = "Split a record that was two containers", description = """
            `container` is the second one as it would be registered, `facts` has the ids of its own requalifications, \
            repairs, holds, fills, emptyings and movements, as the history names them; all else stays. Both are held \
            with their identity disputed unless `disputed` is false.""")
    ResponseEntity<?> split(@PathVariable UUID id, @RequestBody SplitRequest request,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var read = request.read(LocalDate.now(clock));
        return idempotency.once(key, caller.id(), "POST /api/containers/" + id + "/splits", request,
                () -> created(acts.split(id, ifMatch, read.second(), read.said(), caller)));
    }

    private static ResponseEntity<IdentityActResponse> created(IdentityAct act) {
        return ResponseEntity.created(URI.create("/api/identity-acts/" + act.id()))
                .body(IdentityActResponse.from(act));
    }

    @GetMapping("/identity-acts/{id}")
    @Operation(summary = "A merge or a split, and what undid it")
    IdentityActResponse one(@PathVariable UUID id) {
        return IdentityActResponse.from(acts.find(id).orElseThrow(() -> Problem.notFound("act").asException()));
    }

    @PostMapping("/identity-acts/{id}/undo")
    @Operation(summary = "Undo a merge or a split", description = """
            The latest of a record is undone first. After a merge both records stand as before; what was recorded since \
            stays with the one on which it was recorded. After a split the second record is closed, and what was recorded \
            on it counts for the first. A lift of a hold given while the hold was filed otherwise counts no more.""")
    ResponseEntity<?> undo(@PathVariable UUID id, @RequestBody UndoRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var said = request.read();
        return idempotency.once(key, caller.id(), "POST /api/identity-acts/" + id + "/undo", request,
                () -> ResponseEntity.ok(IdentityActResponse.from(acts.undo(id, said, caller))));
    }
}
