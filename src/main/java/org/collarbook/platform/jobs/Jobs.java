package org.collarbook.platform.jobs;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.dao.DataAccessException;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;

/**
 * Does the jobs that are queued: each kind on a thread of its own, one job after another, so that no kind waits for
 * another. Other threads renew the leases meanwhile.
 */
@Component
public class Jobs implements DisposableBean {

    private static final Logger log = LoggerFactory.getLogger(Jobs.class);
    private static final int BEAT_SECONDS = 2;
    private static final int PATIENCE_SECONDS = 10;
    private static final ThreadFactory AT_WORK = daemons("jobs-");
    private static final ThreadFactory AT_BEATS = daemons("beats-");

    private final Map<JobKind, ExecutorService> workers;
    /** One for each kind: a beat waits where the result of its job is being written. */
    private final ScheduledExecutorService beats;
    private final Set<JobRun> underWay = ConcurrentHashMap.newKeySet();
    private volatile boolean stopping;

    Jobs(List<JobKind> kinds) {
        workers = kinds.stream().collect(Collectors.toMap(Function.identity(), kind -> worker()));
        beats = Executors.newScheduledThreadPool(kinds.size(), AT_BEATS);
    }

    private static ThreadFactory daemons(String name) {
        return Thread.ofPlatform().daemon().name(name, 0).factory();
    }

    /** One call that waits is enough: whatever was queued before it begins is found. */
    private static ExecutorService worker() {
        return new ThreadPoolExecutor(1, 1, 0, TimeUnit.SECONDS, new ArrayBlockingQueue<>(1), AT_WORK,
                new ThreadPoolExecutor.DiscardPolicy());
    }

    /** What a killed service left, and what another one queued and then died. */
    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}", fixedDelayString = "PT5S")
    void takeUp() {
        workers.keySet().forEach(this::start);
    }

    /** Called when a job was queued and its transaction has ended; also without it the job is begun within seconds. */
    public void start(JobKind kind) {
        workers.get(kind).execute(() -> all(kind));
    }

    private void all(JobKind kind) {
        try {
            for (var claim = kind.queue().claim(); claim.isPresent(); claim = kind.queue().claim()) {
                run(kind, new JobRun(kind.queue(), claim.get()));
                if (stopping) {
                    return;
                }
            }
        } catch (DataAccessException | TransactionException failed) {
            log.warn("{}: what is queued is begun later", kind.word(), failed);
        }
    }

    private void run(JobKind kind, JobRun job) {
        var claim = job.claim();
        underWay.add(job);
        var beat = beats.scheduleWithFixedDelay(job::beat, BEAT_SECONDS, BEAT_SECONDS, TimeUnit.SECONDS);
        try {
            kind.run(job);
        } catch (NotOurs letGo) {
            log.info("{} {} was let go: cancelled, another service's, or to go on elsewhere", kind.word(), claim.id());
            if (stopping) {
                kind.queue().handBack(claim);
            }
        } catch (JobFailure failure) {
            kind.queue().fail(claim, failure.code(), failure.getMessage());
        } catch (DataAccessException | TransactionException failed) {
            // its lease runs out, and it is taken up again
            log.warn("{} {} was interrupted and is taken up again", kind.word(), claim.id(), failed);
        } catch (RuntimeException | LinkageError fault) {
            log.error("{} {} failed", kind.word(), claim.id(), fault);
            kind.queue().fail(claim, "UNEXPECTED", "A fault of the service; its log has it.");
        } finally {
            beat.cancel(false);
            underWay.remove(job);
        }
    }

    /** What can be let go within seconds is handed back; the rest is left to its lease. */
    @Override
    public void destroy() throws InterruptedException {
        stopping = true;
        workers.values().forEach(ExecutorService::shutdown);
        underWay.forEach(JobRun::letGo);
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        for (var worker : workers.values()) {
            worker.awaitTermination(end - System.nanoTime(), TimeUnit.NANOSECONDS);
        }
        workers.values().forEach(ExecutorService::shutdownNow);
        beats.shutdownNow();
    }
}
