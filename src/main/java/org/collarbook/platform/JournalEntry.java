package org.collarbook.platform;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.UUID;

/** A fact in its place of the chain; {@code content} is its text as hashed. */
public record JournalEntry(UUID container, long seq, String kind, UUID subject, Instant occurredAt, Instant recordedAt,
        UUID recordedBy, String content, byte[] previousHash, byte[] hash) {

    /** What an empty chain ends with. */
    static final byte[] START = new byte[32];

    static JournalEntry after(byte[] previous, long seq, JournalFact fact, String content) {
        var hash = hash(previous, seq, fact.container(), fact.kind(), fact.subject(), fact.occurredAt(),
                fact.recordedAt(), fact.recordedBy(), content);
        return new JournalEntry(fact.container(), seq, fact.kind(), fact.subject(), fact.occurredAt(),
                fact.recordedAt(), fact.recordedBy(), content, previous, hash);
    }

    /** The hash that this entry should bear after the one before it. */
    byte[] hashAfter(byte[] previous) {
        return hash(previous, seq, container, kind, subject, occurredAt, recordedAt, recordedBy, content);
    }

    private static byte[] hash(byte[] previous, long seq, UUID container, String kind, UUID subject,
            Instant occurredAt, Instant recordedAt, UUID recordedBy, String content) {
        var digest = Sha256.start();
        digest.update(previous);
        for (var part : new Object[]{seq, container, kind, subject, occurredAt, recordedAt, recordedBy, content}) {
            digest.update(part.toString().getBytes(StandardCharsets.UTF_8));
            digest.update((byte) 0);
        }
        return digest.digest();
    }
}
