package org.collarbook.platform;

import java.io.InputStream;
import java.util.function.IntFunction;

/** A file that is kept in pieces, read one piece after the other. */
public final class Pieces extends InputStream {

    /** How long a piece is, but the last. */
    public static final int SIZE = 1 << 20;

    private final IntFunction<byte[]> pieces;
    private byte[] content = {};
    private int at;
    private int piece;
    private long toCome;
    private long before;

    /** {@code pieces} gives each by its number from 0; one that is not there is a fault, never the end of the file. */
    public Pieces(IntFunction<byte[]> pieces, long bytes) {
        this.pieces = pieces;
        this.toCome = bytes;
    }

    @Override
    public int read() {
        return isExhausted() ? -1 : content[at++] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) {
        if (length == 0) {
            return 0;
        }
        if (isExhausted()) {
            return -1;
        }
        int count = Math.min(length, content.length - at);
        System.arraycopy(content, at, buffer, offset, count);
        at += count;
        return count;
    }

    /** How much of it was read. */
    public long passed() {
        return before + at;
    }

    private boolean isExhausted() {
        if (at == content.length && toCome > 0) {
            before += at;
            content = pieces.apply(piece++);
            toCome -= content.length;
            at = 0;
        }
        return at == content.length;
    }
}
