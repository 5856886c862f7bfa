package org.collarbook.registry.web;

import java.net.URI;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Revision;
import org.collarbook.registry.Containers;
import org.collarbook.registry.Correction;
import org.collarbook.registry.MarkCorrections;
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
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api", produces = "application/json")
@Tag(name = "Identity")
class CorrectionsController {

    private final MarkCorrections corrections;
    private final Tags tags;
    private final Containers containers;
    private final Idempotency idempotency;

    CorrectionsController(MarkCorrections corrections, Tags tags, Containers containers, Idempotency idempotency) {
        this.corrections = corrections;
        this.tags = tags;
        this.containers = containers;
        this.idempotency = idempotency;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/containers/{id}/mark-corrections")
    @Operation(summary = "Correct marks that were misread", description = """
            `marks` has those that are read otherwise now, as stamped; null says that one cannot be read after all. The \
            act can be taken back.""")
    ResponseEntity<?> correct(@PathVariable UUID id, @RequestBody MarkCorrectionRequest request,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var read = request.read();
        return idempotency.once(key, caller.id(), "POST /api/containers/" + id + "/mark-corrections", request,
                () -> done(corrections.correct(id, ifMatch, read.marks(), read.reason(), caller)));
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/mark-corrections/{id}/reversals")
    @Operation(summary = "Take a correction or a change of tag back", description = """
            The earlier values are put back, unless a later act changed one of them again. `If-Match` names the version \
            of the container. A reversal is a correction itself and can be taken back.""")
    ResponseEntity<?> takeBack(@PathVariable UUID id, @RequestBody ReasonRequest request,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var why = request.read();
        return idempotency.once(key, caller.id(), "POST /api/mark-corrections/" + id + "/reversals", request,
                () -> done(corrections.takeBack(id, ifMatch, why, caller)));
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/containers/{id}/tags")
    @Operation(summary = "Tag a container anew", description = """
            The tag that it bore is free for another container and remembered as formerly borne by this one.""")
    ResponseEntity<?> tag(@PathVariable UUID id, @RequestBody TagRequest request,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var read = request.read();
        return idempotency.once(key, caller.id(), "POST /api/containers/" + id + "/tags", request,
                () -> done(tags.tag(id, ifMatch, read.tag(), read.reason(), caller)));
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/containers/{id}/tag-removals")
    @Operation(summary = "Take the tag off a container, which has lost it, say")
    ResponseEntity<?> untag(@PathVariable UUID id, @RequestBody ReasonRequest request,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var why = request.read();
        return idempotency.once(key, caller.id(), "POST /api/containers/" + id + "/tag-removals", request,
                () -> done(tags.tag(id, ifMatch, null, why, caller)));
    }

    private ResponseEntity<CorrectionResponse> done(Correction correction) {
        var container = containers.find(correction.containerId()).orElseThrow();
        return ResponseEntity.created(URI.create("/api/containers/" + container.id() + "/identity"))
                .eTag(new Revision(container.version()).etag()).body(CorrectionResponse.from(correction));
    }

    /** Who bears a tag, and who bore it before. */
    record TagResponse(String tag, @Nullable UUID containerId, List<Tags.Former> formerly) {}

    @GetMapping("/tags")
    @Operation(summary = "Which container bears a tag, and which ones bore it", description = """
            Without `containerId` nobody bears it now. `formerly` has the latest first, at most twenty.""")
    TagResponse borne(@RequestParam @Nullable String tag) {
        var inputs = new Inputs();
        var read = TagRequest.tag(inputs, "tag", tag);
        inputs.done();
        if (read == null) {
            throw new IllegalStateException("a tag was neither read nor refused");
        }
        var bearer = containers.page(null, read, null, PageSize.of(1));
        return new TagResponse(read.value(), bearer.items().isEmpty()
                ? null
                : bearer.items().getFirst().id(), tags.formerly(read));
    }
}
