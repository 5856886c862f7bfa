package org.collarbook.registry.web;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.collarbook.registry.IdentityAct;
import org.jspecify.annotations.Nullable;

/**
 * A merge or a split. {@code container} is the record that counts or that was split, {@code other} the one that it
 * absorbed or that was registered for the second container.
 */
public record IdentityActResponse(UUID id, String kind, UUID container, UUID other, List<String> setAside,
        List<String> fillWasRefusedFor, @Nullable UUID undoes, String reason, Instant recordedAt, UUID recordedBy,
        @Nullable Undone undone) {

    public record Undone(String reason, Instant recordedAt, UUID recordedBy) {}

    public static IdentityActResponse from(IdentityAct act) {
        var undone = act.undone();
        boolean isMerge = act.kind() == IdentityAct.Kind.MERGE;
        return new IdentityActResponse(act.id(), act.kind().name(), isMerge ? act.into() : act.from(),
                isMerge ? act.from() : act.into(), act.setAside(), act.confirmed(), act.undoes(), act.reason(),
                act.recordedAt(), act.recordedBy(), undone == null
                        ? null
                        : new Undone(undone.reason(), undone.recordedAt(), undone.recordedBy()));
    }
}
