package org.collarbook.holds;

import java.time.Instant;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A recall as it is recorded. While it runs it holds whatever matches it; {@code swept} when all that was registered
 * before it has been looked at.
 */
public record Recall(UUID id, NewRecall about, Instant recordedAt, boolean swept, @Nullable End end) {

    public record End(String reason, Instant recordedAt) {}
}
