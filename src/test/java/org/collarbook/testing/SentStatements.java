package org.collarbook.testing;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;

/**
 * What the driver sends of one thread, by its own log: each execution of a statement and each COPY. Other threads ask for
 * jobs and scan meanwhile, those of other contexts too, so a count of all of them would hang on the clock.
 */
public final class SentStatements extends Handler implements AutoCloseable {

    private final Logger driver = Logger.getLogger("org.postgresql.core.v3.QueryExecutorImpl");
    private final Level before = driver.getLevel();
    private final Map<Thread, Long> statements = new ConcurrentHashMap<>();
    private final Predicate<String> counted;

    private SentStatements(Predicate<String> counted) {
        this.counted = counted;
        setLevel(Level.ALL);
        driver.setLevel(Level.FINEST);
        driver.setUseParentHandlers(false);
        driver.addHandler(this);
    }

    public static SentStatements byThisThread() {
        return new SentStatements(Thread.currentThread().getName()::equals);
    }

    /** What the request at work sends: of the server's threads, the busiest. */
    public static SentStatements byTheRequest() {
        return new SentStatements(thread -> thread.contains("-exec-") || thread.startsWith("tomcat-handler-"));
    }

    /** What the job at work sends: of the threads that do jobs, the busiest. */
    public static SentStatements byTheJob() {
        return new SentStatements(thread -> thread.startsWith("jobs-"));
    }

    @Override
    public void publish(LogRecord message) {
        var text = String.valueOf(message.getMessage());
        if ((text.contains("FE=> Execute") || text.contains("FE=> Query(CopyStart)"))
                && counted.test(Thread.currentThread().getName())) {
            statements.merge(Thread.currentThread(), 1L, Long::sum);
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
        return statements.values().stream().mapToLong(Long::longValue).max().orElse(0);
    }
}
