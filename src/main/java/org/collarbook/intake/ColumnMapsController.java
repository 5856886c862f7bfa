package org.collarbook.intake;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.intake.ColumnMapContent.HeadingTold;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/column-maps", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Imports")
class ColumnMapsController {

    record ColumnMapTold(String name, int version, @Nullable Map<String, @Nullable HeadingTold> columns,
            @Nullable Map<String, @Nullable String> fixed, @Nullable List<@Nullable String> ignored,
            @Nullable Map<String, @Nullable Map<String, @Nullable String>> words, @Nullable String dateFormat,
            Instant changedAt, UUID changedBy) {

        static ColumnMapTold from(ColumnMaps.Kept kept) {
            var content = kept.content();
            return new ColumnMapTold(kept.name(), kept.version(), content.columns(), content.fixed(),
                    content.ignored(), content.words(), content.dateFormat(), kept.changedAt(), kept.changedBy());
        }
    }

    record ColumnMapsTold(List<ColumnMapTold> items) {}

    private final ColumnMaps maps;

    ColumnMapsController(ColumnMaps maps) {
        this.maps = maps;
    }

    @GetMapping
    @Operation(summary = "Every column map, by name")
    ColumnMapsTold all() {
        return new ColumnMapsTold(maps.all().stream().map(ColumnMapTold::from).toList());
    }

    @GetMapping("/{name}")
    @Operation(summary = "How files of one kind are read")
    ResponseEntity<ColumnMapTold> one(@PathVariable String name) {
        return told(name, HttpStatus.OK);
    }

    @PutMapping(path = "/{name}", consumes = MediaType.APPLICATION_JSON_VALUE)
    @ApiResponse(responseCode = "201", description = "Made", useReturnTypeSchema = true)
    @ApiResponse(responseCode = "200", description = "Replaced", useReturnTypeSchema = true)
    @Operation(summary = "Say how files of one kind are read, under a new name or in place of what was said", description = """
            `columns`: heading of theirs to the column of the template, with the `unit` of its numbers; `fixed`: what all rows
            have in a column that the file has not; `ignored`: headings left out on purpose; `words`: by column, their word to
            the template's; `dateFormat`: the order of day, month and year. A new name takes no `If-Match`.""")
    ResponseEntity<ColumnMapTold> put(@PathVariable String name, @RequestBody ColumnMapContent content,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch, Caller caller) {
        boolean isNew = maps.put(name, content, ifMatch, caller.id());
        return told(name, isNew ? HttpStatus.CREATED : HttpStatus.OK);
    }

    @ResponseStatus(HttpStatus.NO_CONTENT)
    @DeleteMapping("/{name}")
    @Operation(summary = "Drop a column map; ledgers handed in with it keep their copy")
    ResponseEntity<Void> drop(@PathVariable String name,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            Caller caller) {
        maps.drop(name, ifMatch, caller.id());
        return ResponseEntity.noContent().build();
    }

    private ResponseEntity<ColumnMapTold> told(String name, HttpStatus status) {
        var kept = maps.find(name).orElseThrow(() -> Problem.notFound("column map").asException());
        return ResponseEntity.status(status).eTag(new Revision(kept.version()).etag()).body(ColumnMapTold.from(kept));
    }
}
