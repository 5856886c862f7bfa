package org.collarbook.portal.notices;

import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;

import org.collarbook.portal.notices.Attempt.Outcome;
import org.collarbook.portal.notices.NoticeQueue.Next;
import org.collarbook.portal.notices.NoticeQueue.Turn;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;

/**
 * Sends what waits: each endpoint whose turn it is on a thread of its own, one notice at a time, so that an endpoint that
 * hangs keeps nobody else waiting.
 */
@Component
class DeliverNotices implements DisposableBean {

    private static final Logger log = LoggerFactory.getLogger(DeliverNotices.class);
    private static final int ENDPOINTS_AT_ONCE = 200;
    /** However many endpoints answer at once: most of the pool is for those who fill and dispatch. */
    private static final int CONNECTIONS = 4;
    /** Then the others have their turn. */
    private static final int IN_A_TURN = 50;

    private final NoticeQueue queue;
    private final SendNotice send;
    private final Clock clock;
    private final Semaphore free = new Semaphore(ENDPOINTS_AT_ONCE);
    private final Semaphore connections = new Semaphore(CONNECTIONS);
    private volatile boolean stopping;
    private final ExecutorService turns = Executors
            .newThreadPerTaskExecutor(Thread.ofVirtual().name("notices-", 0).factory());

    DeliverNotices(NoticeQueue queue, SendNotice send, Clock clock) {
        this.queue = queue;
        this.send = send;
        this.clock = clock;
    }

    /** Begins the turn of every endpoint that something can be sent to, and does not wait for their ends. */
    void begin() {
        while (free.tryAcquire()) {
            var turn = claimed();
            if (turn == null) {
                return;
            }
            turns.execute(() -> {
                try {
                    take(turn);
                } finally {
                    free.release();
                }
            });
        }
    }

    private @Nullable Turn claimed() {
        Turn turn = null;
        try {
            turn = queue.claim().orElse(null);
            return turn;
        } finally {
            if (turn == null) {
                free.release();
            }
        }
    }

    private void take(Turn turn) {
        try {
            boolean ours = true;
            for (int sent = 0; ours && sent < IN_A_TURN; sent++) {
                var next = connected(() -> queue.next(turn));
                ours = next.isPresent() && deliver(turn, next.get());
            }
            connected(() -> {
                queue.release(turn);
                return turn;
            });
        } catch (DataAccessException | TransactionException failed) {
            // its lease runs out, and it is taken up again
            log.warn("The sending of notices to subscription {} was interrupted", turn.subscription(), failed);
        } catch (RuntimeException fault) {
            log.error("The sending of notices to subscription {} failed", turn.subscription(), fault);
        }
    }

    private boolean deliver(Turn turn, Next next) {
        var at = clock.instant();
        var attempt = attempt(turn, next, at);
        return connected(() -> queue.record(turn, next, at, attempt));
    }

    /** A fault of ours is a failed attempt too: it has its retries and its end, and what waits behind it has its turn. */
    private Attempt attempt(Turn turn, Next next, Instant at) {
        try {
            return send.send(URI.create(next.url()), headers(next, at.getEpochSecond()), next.body());
        } catch (RuntimeException fault) {
            if (stopping) {
                throw fault;
            }
            log.error("Notice {} of subscription {} could not be sent", next.id(), turn.subscription(), fault);
            return new Attempt(Outcome.NOT_REACHED, null, 0, "A fault of the service; its log has it.", null);
        }
    }

    private <T> T connected(Supplier<T> work) {
        connections.acquireUninterruptibly();
        try {
            return work.get();
        } finally {
            connections.release();
        }
    }

    private static Map<String, String> headers(Next next, long timestamp) {
        var headers = new LinkedHashMap<String, String>();
        headers.put("webhook-id", next.id().toString());
        headers.put("webhook-timestamp", String.valueOf(timestamp));
        headers.put("webhook-signature", Secret.signatures(next.secrets(), next.id(), timestamp, next.body()));
        return headers;
    }

    /** What is being sent is left to its lease. */
    @Override
    public void destroy() {
        stopping = true;
        turns.shutdownNow();
    }
}
