package org.collarbook.registry;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A merge: {@code into} is the record that counts, {@code from} the one that it absorbed. A split: {@code from} was found
 * to be two, and {@code into} was registered for the second.
 */
public record IdentityAct(UUID id, Kind kind, UUID from, UUID into, List<String> setAside, List<String> confirmed,
        @Nullable UUID undoes, String reason, Instant recordedAt, UUID recordedBy, @Nullable Undone undone) {

    public IdentityAct {
        setAside = List.copyOf(setAside);
        confirmed = List.copyOf(confirmed);
    }

    public enum Kind {
        MERGE,
        SPLIT
    }

    public record Undone(String reason, Instant recordedAt, UUID recordedBy) {}
}
