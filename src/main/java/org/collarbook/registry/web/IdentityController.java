package org.collarbook.registry.web;

import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.PageSize;
import org.collarbook.registry.Absorbed;
import org.collarbook.registry.Containers;
import org.collarbook.registry.IdentityEntry;
import org.collarbook.registry.IdentityHistory;
import org.collarbook.registry.Tags;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Identity")
class IdentityController {

    private final Containers containers;
    private final Absorbed absorbed;
    private final Tags tags;
    private final IdentityHistory history;

    IdentityController(Containers containers, Absorbed absorbed, Tags tags, IdentityHistory history) {
        this.containers = containers;
        this.absorbed = absorbed;
        this.tags = tags;
        this.history = history;
    }

    /** Either a correction or an act between two records. */
    @Schema(name = "IdentityEntry")
    record Entry(@Nullable CorrectionResponse correction, @Nullable IdentityActResponse act) {

        static Entry from(IdentityEntry entry) {
            return switch (entry) {
                case IdentityEntry.Corrected(var correction) -> new Entry(CorrectionResponse.from(correction), null);
                case IdentityEntry.Acted(var act) -> new Entry(null, IdentityActResponse.from(act));
            };
        }
    }

    record Identity(UUID id, @Nullable String tag, List<Tags.Borne> formerTags, @Nullable UUID mergedInto,
            List<UUID> absorbed, List<Entry> items, @Nullable String next) {}

    @GetMapping(path = "/api/containers/{id}/identity", produces = "application/json")
    @Operation(summary = "Which container a record is, and what was done about that", description = """
            The tags it bore (at most twenty), the records that it absorbed, and by pages every correction of marks and \
            tag, merge and split, the latest first.""")
    Identity of(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var container = containers.require(id);
        var page = history.of(id, Cursor.parseId(cursor), PageSize.of(size));
        return new Identity(id, container.tag() == null ? null : container.tag().value(), tags.borneBy(id),
                absorbed.into(id).orElse(null), absorbed.by(id), page.items().stream().map(Entry::from).toList(),
                page.next());
    }
}
