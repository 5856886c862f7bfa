package org.collarbook.access;

import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/keys", produces = "application/json")
@Tag(name = "Access")
class KeysController {

    record NewKey(@Nullable String name, @Nullable List<@Nullable String> roles, @Nullable UUID customerId,
            @Nullable Instant expiresAt) {

        private static final String ROLES = "one or more of filler, dispatcher, yard, clerk, administrator;"
                + " or portal alone, with customerId";

        private static final Duration MOST = Duration.ofDays(36_525);

        /** The roles asked for, or everything that is wrong with the request. */
        Set<Role> check(Instant now) {
            var inputs = new Inputs();
            if (name == null || name.isBlank() || name.length() > 200) {
                inputs.refuse("/name", "OUT_OF_RANGE", name, "1 to 200 characters");
            }
            var asked = EnumSet.noneOf(Role.class);
            for (var word : roles == null ? List.<@Nullable String>of() : roles) {
                role(word, asked, inputs);
            }
            boolean portal = asked.contains(Role.PORTAL);
            if (asked.isEmpty() && !inputs.areRefused() || portal && asked.size() > 1
                    || portal != (customerId != null)) {
                inputs.refuse("/roles", "NOT_ALLOWED", String.valueOf(roles), ROLES);
            }
            if (expiresAt != null && (!expiresAt.isAfter(now) || expiresAt.isAfter(now.plus(MOST)))) {
                inputs.refuse("/expiresAt", "OUT_OF_RANGE", expiresAt.toString(),
                        "a time to come, within the next 100 years");
            }
            inputs.done();
            return asked;
        }

        private static void role(@Nullable String word, Set<Role> asked, Inputs inputs) {
            try {
                asked.add(Role.valueOf(String.valueOf(word).toUpperCase(Locale.ROOT)));
            } catch (IllegalArgumentException unknown) {
                inputs.refuse("/roles", "UNKNOWN_ROLE", word, ROLES);
            }
        }
    }

    /** The key itself is in this one answer and nowhere else. */
    record ShownKey(UUID id, String key) {}

    record KeyList(List<Keys.Issued> items) {}

    private final Keys keys;
    private final Clock clock;

    KeysController(Keys keys, Clock clock) {
        this.keys = keys;
        this.clock = clock;
    }

    @GetMapping
    @Operation(summary = "The keys issued, without the keys themselves")
    KeyList list() {
        return new KeyList(keys.all());
    }

    @PostMapping
    @Operation(summary = "Issue a key; it is shown in this answer only")
    ResponseEntity<ShownKey> issue(@RequestBody NewKey request, Caller caller) {
        var roles = request.check(clock.instant());
        var key = ApiKey.generate();
        var id = keys.issue(key, String.valueOf(request.name()).strip(), roles, request.customerId(),
                request.expiresAt(), caller.id());
        return ResponseEntity.created(URI.create("/api/keys/" + id)).body(new ShownKey(id, key.text()));
    }

    @DeleteMapping("/{id}")
    @Operation(summary = "Revoke a key at once")
    ResponseEntity<Void> revoke(@PathVariable UUID id) {
        keys.revoke(id);
        return ResponseEntity.noContent().build();
    }
}
