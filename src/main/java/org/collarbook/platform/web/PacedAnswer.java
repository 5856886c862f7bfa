package org.collarbook.platform.web;

import java.io.IOException;

import org.apache.coyote.CloseNowException;
import org.jspecify.annotations.Nullable;

import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.WriteListener;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpServletResponseWrapper;

/**
 * An answer that ends in an error once its reader has kept it waiting for too long: what sends it, a thread and for a list
 * a connection to the database, is others' too. The server itself cuts off who reads nothing at all
 * ({@code server.tomcat.connection-timeout}); one who reads a little now and then would hold it for ever.
 */
final class PacedAnswer extends HttpServletResponseWrapper {

    /** Between two looks at the clock. */
    private static final int PIECE = 8192;

    private interface Sending {
        void send() throws IOException;
    }

    private final AnswerPace pace;
    private @Nullable ServletOutputStream body;
    private @Nullable SlowReader cutOff;

    PacedAnswer(HttpServletResponse response, AnswerPace pace) {
        super(response);
        this.pace = pace;
    }

    @Override
    public ServletOutputStream getOutputStream() throws IOException {
        if (body == null) {
            body = new Paced(super.getOutputStream());
        }
        return body;
    }

    /** Whoever was told of it meanwhile may have taken it for a reader who went away, and would end the answer well. */
    void breakOff() throws SlowReader {
        if (cutOff != null) {
            throw cutOff;
        }
    }

    private final class Paced extends ServletOutputStream {

        private final ServletOutputStream out;
        private long waited;
        private long written;

        Paced(ServletOutputStream out) {
            this.out = out;
        }

        @Override
        public void write(int one) throws IOException {
            write(new byte[]{(byte) one}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            for (int at = offset; at < offset + length; at += PIECE) {
                int piece = Math.min(PIECE, offset + length - at);
                int from = at;
                wait(() -> out.write(bytes, from, piece));
                written += piece;
            }
        }

        @Override
        public void flush() throws IOException {
            wait(out::flush);
        }

        private void wait(Sending sending) throws IOException {
            if (cutOff == null && pace.isTooSlow(waited, written)) {
                cutOff = new SlowReader(written);
            }
            breakOff();
            long begun = System.nanoTime();
            sending.send();
            waited += System.nanoTime() - begun;
        }

        @Override
        public void close() throws IOException {
            out.close();
        }

        @Override
        public boolean isReady() {
            return out.isReady();
        }

        @Override
        public void setWriteListener(WriteListener listener) {
            out.setWriteListener(listener);
        }
    }

    /** The answer is cut off, so that nobody takes it for whole. */
    static final class SlowReader extends CloseNowException {

        private static final long serialVersionUID = 1;

        SlowReader(long written) {
            super("an answer was read too slowly and was cut off after " + written + " bytes");
        }
    }
}
