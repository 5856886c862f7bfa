package org.collarbook.holds;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Holds what was registered before a recall, in short transactions. Where it has been is told by the holds themselves,
 * so that a killed one is gone on with by whichever service comes next.
 */
@Component
public class RecallSweep {

    private static final Logger log = LoggerFactory.getLogger(RecallSweep.class);
    static final UUID FIRST = new UUID(0, 0);
    static final int CHUNK = 500;

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final RecallMatches matches;
    private final Clock clock;

    RecallSweep(JdbcClient jdbc, TransactionTemplate transaction, RecallMatches matches, Clock clock) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.matches = matches;
        this.clock = clock;
    }

    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}", fixedDelayString = "PT1M")
    void run() {
        jdbc.sql("select recall_id from recall_sweep where finished_at is null").query(UUID.class).list()
                .forEach(this::start);
    }

    /** The same for one recall at once; what fails is gone on with later. */
    public void start(UUID recall) {
        try {
            over(recall);
        } catch (DataAccessException | TransactionException failed) {
            log.warn("Recall {} is recorded; holding what it matches was interrupted and goes on later", recall,
                    failed);
        }
    }

    /** All that is committed; finished once nothing can be under way that has not seen the recall. */
    void over(UUID recall) {
        boolean seenByAll = jdbc.sql("""
                update recall_sweep set unseen_below = coalesce(unseen_below, pg_snapshot_xmax(pg_current_snapshot()))
                where recall_id = ? returning unseen_below <= pg_snapshot_xmin(pg_current_snapshot())""").param(recall)
                .query(Boolean.class).single();
        free(recall);
        oneByOne(recall);
        if (seenByAll) {
            jdbc.sql("update recall_sweep set finished_at = ? where recall_id = ? and finished_at is null")
                    .params(clock.instant().atOffset(ZoneOffset.UTC), recall).update();
        }
    }

    private void free(UUID recall) {
        var after = FIRST;
        for (int chunk = CHUNK; chunk == CHUNK;) {
            var from = after;
            var held = transaction.execute(status -> {
                var next = matches.lockFree(recall, from, CHUNK);
                matches.place(next);
                return next;
            });
            chunk = held == null ? 0 : held.size();
            after = held == null || held.isEmpty() ? after : held.getLast().container();
        }
    }

    /** What somebody else was at is waited for with nothing else in hand. */
    private void oneByOne(UUID recall) {
        var after = FIRST;
        for (var next = matches.unheld(recall, after, CHUNK); !next.isEmpty(); next = matches.unheld(recall, after,
                CHUNK)) {
            next.forEach(match -> transaction.executeWithoutResult(
                    status -> matches.place(matches.lock(List.of(match.container())))));
            after = next.getLast().container();
        }
    }
}
