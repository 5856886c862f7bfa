package org.collarbook.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** A transaction that has done its work and is held open, while others meet what it holds. */
public final class UnderWay implements AutoCloseable {

    private static final long SECONDS = 60;

    private final ExecutorService threads = Executors.newCachedThreadPool();
    private final CountDownLatch goOn = new CountDownLatch(1);
    private final JdbcClient jdbc;
    private final Future<?> work;
    private volatile int backend;

    public UnderWay(TransactionTemplate transaction, JdbcClient jdbc, Runnable work) {
        this.jdbc = jdbc;
        var done = new CountDownLatch(1);
        this.work = threads.submit(() -> transaction.executeWithoutResult(status -> {
            backend = jdbc.sql("select pg_backend_pid()").query(Integer.class).single();
            work.run();
            done.countDown();
            await(goOn);
        }));
        await(done);
    }

    /** Runs until it is over or somebody waits for what this holds. */
    public Future<?> meets(Runnable other) throws InterruptedException {
        var met = threads.submit(other);
        long end = System.nanoTime() + Duration.ofSeconds(SECONDS).toNanos();
        while (!met.isDone() && !somebodyWaits()) {
            assertThat(System.nanoTime()).as("neither over nor waiting").isLessThan(end);
            Thread.sleep(20);
        }
        return met;
    }

    private boolean somebodyWaits() {
        return jdbc.sql("select exists (select from pg_locks where not granted and ? = any (pg_blocking_pids(pid)))")
                .param(backend).query(Boolean.class).single();
    }

    public void commit() throws InterruptedException, ExecutionException, TimeoutException {
        goOn.countDown();
        work.get(SECONDS, TimeUnit.SECONDS);
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(SECONDS, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException interrupted) {
            throw new IllegalStateException(interrupted);
        }
    }

    @Override
    public void close() {
        goOn.countDown();
        threads.close();
    }
}
