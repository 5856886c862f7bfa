package org.collarbook.testing;

import java.util.concurrent.atomic.AtomicLong;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;

/** What the driver sends, by its own log: each execution of a statement and each COPY. */
public final class SentStatements extends Handler implements AutoCloseable {

    private final Logger driver = Logger.getLogger("org.postgresql.core.v3.QueryExecutorImpl");
    private final Level before = driver.getLevel();
    private final AtomicLong statements = new AtomicLong();

    private final String threads;

    public SentStatements() {
        this("");
    }

    /** Only what is sent by threads whose names begin so. */
    public SentStatements(String threads) {
        this.threads = threads;
        setLevel(Level.ALL);
        driver.setLevel(Level.FINEST);
        driver.setUseParentHandlers(false);
        driver.addHandler(this);
    }

    @Override
    public void publish(LogRecord message) {
        var text = String.valueOf(message.getMessage());
        if ((text.contains("FE=> Execute") || text.contains("FE=> Query(CopyStart)"))
                && Thread.currentThread().getName().startsWith(threads)) {
            statements.incrementAndGet();
        }
    }

    @Override
    public void flush() {
        // nothing is held back
    }

    @Override
    public void close() {
        driver.removeHandler(this);
        driver.setUseParentHandlers(true);
        driver.setLevel(before);
    }

    public long count() {
        return statements.get();
    }
}
