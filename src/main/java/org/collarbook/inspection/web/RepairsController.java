package org.collarbook.inspection.web;

import java.net.URI;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.inspection.Repairs;
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

@RestController
@RequestMapping(path = "/api", produces = "application/json")
@Tag(name = "Requalification")
class RepairsController {

    private final Repairs repairs;
    private final Containers containers;
    private final Idempotency idempotency;

    RepairsController(Repairs repairs, Containers containers, Idempotency idempotency) {
        this.repairs = repairs;
        this.containers = containers;
        this.idempotency = idempotency;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/containers/{id}/repairs")
    @Operation(summary = "Record a repair, rebuilding or reheat treatment of a 4-series cylinder", description = """
            The due month does not move: the requalification that may belong to it is a record of its own.""")
    ResponseEntity<?> record(@PathVariable UUID id, @RequestBody RepairRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        containers.require(id);
        var done = request.read("");
        var path = "/api/containers/" + id + "/repairs";
        return idempotency.once(key, caller.id(), "POST " + path, request, () -> ResponseEntity
                .created(URI.create(path)).body(RepairResponse.from(repairs.record(id, done, caller))));
    }

    @GetMapping("/containers/{id}/repairs")
    @Operation(summary = "A container's repairs, the newest first, by pages", description = """
            `all=true` shows those as well that were corrected, each with what took its place and why.""")
    Page<RepairResponse> list(@PathVariable UUID id, @RequestParam(defaultValue = "false") boolean all,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        containers.require(id);
        var rows = PageSize.of(size);
        var at = DayCursor.parse(cursor);
        return Page.of(repairs.of(id, all, at == null ? null : at.day(), at == null ? null : at.id(), rows), rows,
                one -> Cursor.after(one.done().performedOn(), one.id()))
                .map(page -> page.stream().map(RepairResponse::from).toList());
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/repairs/{id}/corrections")
    @Operation(summary = "Correct a repair that was recorded by mistake; it stays, and another entry supersedes it", description = """
                    The answer is the entry that takes its place, or the entry itself where it is void.""")
    ResponseEntity<?> correct(@PathVariable UUID id, @RequestBody RepairCorrectionRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var container = repairs.find(id).containerId();
        var read = request.read();
        return idempotency.once(key, caller.id(), "POST /api/repairs/" + id + "/corrections", request,
                () -> ResponseEntity.created(URI.create("/api/containers/" + container + "/repairs"))
                        .body(RepairResponse.from(repairs.correct(id, read.instead(), read.reason(), caller))));
    }
}
