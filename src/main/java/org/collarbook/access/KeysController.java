package org.collarbook.access;

import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/keys", produces = "application/json")
@Tag(name = "Access")
class KeysController {

    private static final int MOST_HOURS = 720;
    private static final int USUAL_HOURS = 24;

    /** The key itself is in this one answer and nowhere else. */
    record ShownKey(UUID id, String key) {}

    /** How long the old key goes on. */
    record Rotation(@Nullable Integer overlapHours) {

        Duration overlap() {
            int hours = overlapHours == null ? USUAL_HOURS : overlapHours;
            if (hours < 0 || hours > MOST_HOURS) {
                throw Problem.invalid("/overlapHours", "OUT_OF_RANGE", String.valueOf(hours), "0 to " + MOST_HOURS
                        + " hours; " + USUAL_HOURS + " when absent").asException();
            }
            return Duration.ofHours(hours);
        }
    }

    private final Keys keys;
    private final ScopePlaces places;
    private final Clock clock;

    KeysController(Keys keys, ScopePlaces places, Clock clock) {
        this.keys = keys;
        this.places = places;
        this.clock = clock;
    }

    @GetMapping
    @Operation(summary = "The keys issued, without the keys themselves")
    Page<Issued> list(@RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var asked = PageSize.of(size);
        return Page.of(keys.page(Cursor.parseId(cursor), asked), asked, key -> Cursor.after(key.id()));
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Issue a key; it is shown in this answer only")
    ResponseEntity<ShownKey> issue(@RequestBody NewKey request, Caller caller) {
        var grant = request.check(clock.instant(), places);
        var key = ApiKey.generate();
        return shown(keys.issue(key, grant, caller.id()), key);
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping("/{id}/rotation")
    @Operation(summary = "Replace a key by one that opens the same; the old one goes on for the overlap")
    ResponseEntity<ShownKey> rotate(@PathVariable UUID id, @RequestBody Rotation request, Caller caller) {
        var key = ApiKey.generate();
        return shown(keys.rotate(id, key, request.overlap(), caller.id()), key);
    }

    private static ResponseEntity<ShownKey> shown(UUID id, ApiKey key) {
        return ResponseEntity.created(URI.create("/api/keys/" + id)).body(new ShownKey(id, key.text()));
    }

    @ResponseStatus(HttpStatus.NO_CONTENT)
    @DeleteMapping("/{id}")
    @Operation(summary = "Revoke a key at once", description = """
            What was made with it stays: the notice subscriptions of a portal go on, and so do calendars. \
            GET /api/customers/{id}/notice-subscriptions and GET /api/calendar-feeds name them, DELETE ends them.""")
    ResponseEntity<Void> revoke(@PathVariable UUID id) {
        keys.revoke(id);
        return ResponseEntity.noContent().build();
    }
}
