package org.collarbook.intake.files;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** A text on its way to be stored: refused as soon as a line is longer than any of a ledger. */
final class ShortLines extends FilterInputStream {

    /** Of UTF-8 a character takes three bytes at most, and the two chars of a pair four. */
    private static final int LONGEST_LINE = 3 * HandedIn.LONGEST_ROW;

    private long line = 1;
    private int length;
    private boolean afterReturn;

    ShortLines(InputStream in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        var one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int wanted) throws IOException {
        int count = super.read(buffer, offset, wanted);
        for (int i = offset; i < offset + count; i++) {
            measure(buffer[i]);
        }
        return count;
    }

    /** A line ends with LF, CR, or both. */
    private void measure(byte b) {
        if (b == '\n' || b == '\r') {
            line += b == '\n' && afterReturn ? 0 : 1;
            length = 0;
        } else if (++length > LONGEST_LINE) {
            throw FileFault.rowTooLong(line, HandedIn.LONGEST_ROW);
        }
        afterReturn = b == '\r';
    }

    @Override
    public boolean markSupported() {
        return false;
    }
}
