package org.collarbook.platform.web;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;

import org.jspecify.annotations.Nullable;

import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;

/** A request whose body ends in an error once it is too large or has taken too long. */
final class LimitedBody extends HttpServletRequestWrapper {

    private final long most;
    private final Duration time;
    private final Runnable whole;
    private final long begun = System.nanoTime();
    private @Nullable ServletInputStream body;

    /** {@code whole} is run when the body has come. */
    LimitedBody(HttpServletRequest request, long most, Duration time, Runnable whole) {
        super(request);
        this.whole = whole;
        this.most = most;
        this.time = time;
    }

    @Override
    public ServletInputStream getInputStream() throws IOException {
        if (body == null) {
            body = new Counted(super.getInputStream());
        }
        return body;
    }

    @Override
    public BufferedReader getReader() throws IOException {
        return new BufferedReader(new InputStreamReader(getInputStream(), StandardCharsets.UTF_8));
    }

    private final class Counted extends ServletInputStream {

        private final ServletInputStream in;
        private long read;

        Counted(ServletInputStream in) {
            this.in = in;
        }

        @Override
        public int read() throws IOException {
            var one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] bytes, int offset, int length) throws IOException {
            if (System.nanoTime() - begun > time.toNanos()) {
                throw BodyRefused.laterThan(time);
            }
            int more = in.read(bytes, offset, length);
            read += Math.max(0, more);
            if (more < 0 || in.isFinished()) {
                whole.run();
            }
            if (read > most) {
                throw BodyRefused.largerThan(most);
            }
            return more;
        }

        @Override
        public int available() throws IOException {
            return in.available();
        }

        @Override
        public boolean isFinished() {
            return in.isFinished();
        }

        @Override
        public boolean isReady() {
            return in.isReady();
        }

        @Override
        public void setReadListener(ReadListener listener) {
            in.setReadListener(listener);
        }
    }
}
