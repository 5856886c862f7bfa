package org.collarbook.intake.files;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.util.HexFormat;

import org.collarbook.platform.Sha256;

/** What was handed in, as it passes by: counted, and its digest taken. */
final class Digested extends FilterInputStream {

    private final MessageDigest digest = Sha256.start();
    private long bytes;

    Digested(InputStream in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        var one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int count = super.read(buffer, offset, length);
        if (count > 0) {
            digest.update(buffer, offset, count);
            bytes += count;
        }
        return count;
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    long bytes() {
        return bytes;
    }

    /** Of all that has passed; the digest ends with it. */
    String sha256() {
        return HexFormat.of().formatHex(digest.digest());
    }
}
