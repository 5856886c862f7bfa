package org.collarbook.compliance.history;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.Map;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.Journal;
import org.collarbook.platform.JournalEntry;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.WrittenTime;
import org.collarbook.registry.Absorbed;
import org.collarbook.registry.Containers;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

@RestController
@Tag(name = "History")
class HistoryController {

    private static final TypeReference<Map<String, String>> FIELDS = new TypeReference<>() {
    };

    private final Journal journal;
    private final Containers containers;
    private final Absorbed absorbed;
    private final JsonMapper json;

    HistoryController(Journal journal, Containers containers, Absorbed absorbed, JsonMapper json) {
        this.absorbed = absorbed;
        this.journal = journal;
        this.containers = containers;
        this.json = json;
    }

    /** {@code hash} binds the entry to the one before it; {@code recordedOn} is the record that was merged into this one. */
    @Schema(name = "HistoryEntry")
    record Entry(@Nullable UUID recordedOn, long seq, String kind, UUID subject, Instant occurredAt, Instant recordedAt,
            UUID recordedBy,
            Map<String, String> content, String hash) {}

    @GetMapping(path = "/api/containers/{id}/history", produces = "application/json")
    @Operation(summary = "The life of a container, the latest happening first", description = """
            Every recorded fact with when it happened, when it was recorded and by which key. A mark bears no day: what \
            is known by month alone stands at the beginning of its month. What was recorded on a record that was merged \
            into this one stands among the rest, with `recordedOn`.""")
    ResponseEntity<Page<Entry>> history(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        containers.require(id);
        var asked = PageSize.of(size);
        var chains = new ArrayList<>(absorbed.by(id));
        chains.add(id);
        var read = journal.of(chains, place(Cursor.parse(cursor, 3), cursor), asked.limit());
        return ResponseEntity.ok().cacheControl(CacheControl.noStore())
                .body(Page.of(read, asked, entry -> Cursor.after(entry.occurredAt(), entry.seq(), entry.container()))
                        .map(entries -> entries.stream().map(entry -> shown(entry, id)).toList()));
    }

    private static Journal.@Nullable Place place(@Nullable Cursor cursor, @Nullable String text) {
        try {
            return cursor == null
                    ? null
                    : new Journal.Place(WrittenTime.moment(cursor.key().get(0)), Long.parseLong(cursor.key().get(1)),
                            UUID.fromString(cursor.key().get(2)));
        } catch (DateTimeParseException | IllegalArgumentException notOurs) {
            throw Cursor.refused(String.valueOf(text));
        }
    }

    private Entry shown(JournalEntry entry, UUID asked) {
        return new Entry(entry.container().equals(asked) ? null : entry.container(), entry.seq(), entry.kind(),
                entry.subject(), entry.occurredAt(), entry.recordedAt(),
                entry.recordedBy(), json.readValue(entry.content(), FIELDS), HexFormat.of().formatHex(entry.hash()));
    }
}
