package org.collarbook.compliance;

import java.time.Instant;
import java.util.Map;
import java.util.UUID;

/**
 * Fills that are on record, judged anew on their day by what has become known since. One that was not allowed by that is
 * flagged and stays. Only a fill whose moment is known can be judged: where only the day is, nobody knows what came first.
 */
public interface PastFills {

    /** After any fact that may tell of the past: marks, tests, holds, movements; of each container from a moment on. */
    void judge(Map<UUID, Instant> since);

    /** A fill that was just recorded: the past of the others is what it was. */
    void judgeLast(UUID container);
}
