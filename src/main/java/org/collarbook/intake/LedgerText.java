package org.collarbook.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

import org.collarbook.intake.files.FileFault;
import org.collarbook.intake.files.HandedIn;

/**
 * A ledger's bytes as text: UTF-8 and nothing else, and no more of one row than {@link #LONGEST_ROW}, so that neither a
 * 50 MB row nor a quote that is never closed is gathered in memory.
 */
final class LedgerText extends Reader {

    static final int LONGEST_ROW = HandedIn.LONGEST_ROW;
    /** The CSV parser reads ahead by a buffer of its own; {@link LedgerReader} measures the row exactly. */
    private static final int READ_AHEAD = 16 * 1024;
    private static final int BUFFER = 16 * 1024;
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private final InputStream bytes;
    private final CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT).onUnmappableCharacter(CodingErrorAction.REPORT);
    private final ByteBuffer in = ByteBuffer.allocate(BUFFER).flip();
    private final CharBuffer out = CharBuffer.allocate(BUFFER).flip();
    private boolean ended;
    private long line = 1;
    private char last;
    private long rowLine = 1;
    private int left = LONGEST_ROW + READ_AHEAD;

    LedgerText(InputStream bytes) throws IOException {
        this.bytes = bytes;
        if (fill() && out.get(out.position()) == BYTE_ORDER_MARK) {
            out.get();
        }
    }

    /** What was read so far and not asked for yet, to tell the delimiter by. */
    String start() {
        return out.toString();
    }

    void rowBegins(long onLine) {
        rowLine = onLine;
        left = LONGEST_ROW + READ_AHEAD;
    }

    @Override
    public int read(char[] buffer, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (!out.hasRemaining() && !fill()) {
            return -1;
        }
        if (left <= 0) {
            throw FileFault.rowTooLong(rowLine, LONGEST_ROW);
        }
        int count = Math.min(Math.min(length, out.remaining()), left);
        out.get(buffer, offset, count);
        left -= count;
        return count;
    }

    private boolean fill() throws IOException {
        out.clear();
        while (out.position() == 0 && !ended) {
            in.compact();
            int asked = in.remaining();
            int read = bytes.readNBytes(in.array(), in.position(), asked);
            ended = read < asked;
            in.position(in.position() + read).flip();
            var result = decoder.decode(in, out, ended);
            countLines();
            if (result.isError()) {
                throw FileFault.wrongEncoding(line, "not UTF-8");
            }
        }
        out.flip();
        return out.hasRemaining();
    }

    /** A line ends with LF, CR, or both. */
    private void countLines() {
        for (int i = 0; i < out.position(); i++) {
            char c = out.get(i);
            if (c == '\r' || c == '\n' && last != '\r') {
                line++;
            }
            last = c;
        }
    }

    @Override
    public void close() throws IOException {
        bytes.close();
    }
}
