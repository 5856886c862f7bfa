package org.collarbook.registry;

import org.jspecify.annotations.Nullable;

/**
 * Whose it is. Only the owner, or somebody with the owner's consent, may fill it, 49 CFR 173.301(e). {@code owned}:
 * true is the distributor's own, false somebody else's.
 */
public record Ownership(@Nullable Boolean owned, @Nullable String owner, @Nullable Boolean consent) {

    public static final Ownership UNKNOWN = new Ownership(null, null, null);

    /** What 173.301(e) asks: the filler is the owner or has consent; null when neither is known. */
    public @Nullable Boolean mayFill() {
        return Boolean.TRUE.equals(owned) ? Boolean.TRUE : consent;
    }
}
