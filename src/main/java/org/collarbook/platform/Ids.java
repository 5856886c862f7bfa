package org.collarbook.platform;

import java.nio.ByteBuffer;
import java.security.SecureRandom;
import java.util.UUID;

/** Time-ordered identifiers (RFC 9562, version 7), so that new rows land at the right edge of every index. */
public final class Ids {

    private static final SecureRandom RANDOM = new SecureRandom();

    private Ids() {}

    public static UUID next() {
        var bytes = new byte[16];
        RANDOM.nextBytes(bytes);
        var buffer = ByteBuffer.wrap(bytes);
        long random = buffer.getLong(0);
        buffer.putLong(0, (System.currentTimeMillis() << 16) | 0x7000 | (random & 0x0fff));
        buffer.putLong(8, (buffer.getLong(8) & 0x3fffffffffffffffL) | 0x8000000000000000L);
        return new UUID(buffer.getLong(0), buffer.getLong(8));
    }
}
