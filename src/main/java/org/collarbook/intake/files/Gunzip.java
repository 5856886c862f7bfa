package org.collarbook.intake.files;

import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Unpacks gzip (RFC 1952), several members one behind the other included. The JDK's own reader takes garbage behind the
 * end for the end, so that what was lost there would go unseen.
 */
final class Gunzip extends InputStream {

    private static final int FIRST = 0x1f;
    private static final int SECOND = 0x8b;
    private static final int DEFLATE = 8;
    private static final int HEADER_CRC = 2;
    private static final int EXTRA = 4;
    private static final int NAME = 8;
    private static final int COMMENT = 16;
    private static final int RESERVED = 0xe0;

    private final InputStream packed;
    private final Inflater inflater = new Inflater(true);
    private final CRC32 crc = new CRC32();
    private final byte[] in = new byte[16 * 1024];
    private int at;
    private int end;
    private boolean ended;

    Gunzip(InputStream packed) throws IOException {
        this.packed = packed;
        header();
    }

    private int next() throws IOException {
        if (at == end && !refill()) {
            throw FileFault.brokenGzip("breaks off");
        }
        return in[at++] & 0xff;
    }

    private boolean refill() throws IOException {
        at = 0;
        end = Math.max(packed.read(in), 0);
        return end > 0;
    }

    private void header() throws IOException {
        if (next() != FIRST || next() != SECOND || next() != DEFLATE) {
            throw FileFault.brokenGzip("has something behind its end that is not gzip");
        }
        int flags = next();
        if ((flags & RESERVED) != 0) {
            throw FileFault.brokenGzip("has a header that RFC 1952 does not know");
        }
        skip(6);
        if ((flags & EXTRA) != 0) {
            skip(next() | next() << 8);
        }
        if ((flags & NAME) != 0) {
            skipText();
        }
        if ((flags & COMMENT) != 0) {
            skipText();
        }
        if ((flags & HEADER_CRC) != 0) {
            skip(2);
        }
    }

    private void skip(int count) throws IOException {
        for (int i = 0; i < count; i++) {
            next();
        }
    }

    private void skipText() throws IOException {
        while (next() != 0) {
            // a name or comment ends with a zero
        }
    }

    @Override
    public int read() throws IOException {
        var one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        while (!ended) {
            int count = inflate(buffer, offset, length);
            if (count > 0) {
                crc.update(buffer, offset, count);
                return count;
            }
            if (inflater.finished()) {
                trailer();
            } else if (inflater.needsInput()) {
                feed();
            } else {
                throw FileFault.brokenGzip("is damaged");
            }
        }
        return -1;
    }

    private int inflate(byte[] buffer, int offset, int length) {
        try {
            return inflater.inflate(buffer, offset, length);
        } catch (DataFormatException damaged) {
            throw FileFault.brokenGzip("is damaged");
        }
    }

    private void feed() throws IOException {
        if (at == end && !refill()) {
            throw FileFault.brokenGzip("breaks off");
        }
        inflater.setInput(in, at, end - at);
        at = end;
    }

    private void trailer() throws IOException {
        at = end - inflater.getRemaining();
        long wantedCrc = word();
        long wantedLength = word();
        if (wantedCrc != crc.getValue() || wantedLength != (inflater.getBytesWritten() & 0xffff_ffffL)) {
            throw FileFault.brokenGzip("is damaged: its checksum is another");
        }
        inflater.reset();
        crc.reset();
        if (at == end && !refill()) {
            ended = true;
        } else {
            header();
        }
    }

    private long word() throws IOException {
        long word = 0;
        for (int shift = 0; shift < Integer.SIZE; shift += Byte.SIZE) {
            word |= (long) next() << shift;
        }
        return word;
    }

    @Override
    public void close() throws IOException {
        inflater.end();
        packed.close();
    }
}
