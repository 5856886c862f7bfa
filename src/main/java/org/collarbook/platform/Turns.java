package org.collarbook.platform;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

import org.springframework.http.HttpStatus;

/** So many of a kind at once. Who has no turn within some seconds is told to come again. */
public final class Turns {

    private final Semaphore free;
    private final Duration patience;
    private final String refusal;

    /** {@code refusal} tells what is under way, and what to do. */
    public Turns(int atOnce, Duration patience, String refusal) {
        this.free = new Semaphore(atOnce);
        this.patience = patience;
        this.refusal = refusal;
    }

    /** Until it is closed. */
    public interface Turn extends AutoCloseable {
        @Override
        void close();
    }

    public Turn take() {
        if (!isOurs()) {
            throw Problem.of(HttpStatus.SERVICE_UNAVAILABLE, "BUSY", refusal).asException();
        }
        return free::release;
    }

    private boolean isOurs() {
        try {
            return free.tryAcquire(patience.toNanos(), TimeUnit.NANOSECONDS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
