package org.collarbook.compliance;

import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Journal;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Gives a chain to every container that was recorded before there were any, after each start, in short transactions.
 * What has none is looked for, so that a killed walk is gone on with, and of two at once one finds it entered.
 */
@Component
class JournalCatchUp {

    private static final Logger log = LoggerFactory.getLogger(JournalCatchUp.class);
    private static final UUID FIRST = new UUID(0, 0);
    private static final int CHUNK = 500;

    private static final String WITHOUT = """
            select c.id from container c
            where c.id > ? and not exists (select from journal_head h where h.container_id = c.id)
            order by c.id limit ?""";

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Journal journal;

    JournalCatchUp(JdbcClient jdbc, TransactionTemplate transaction, Journal journal) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.journal = journal;
    }

    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}")
    void run() {
        long entered = 0;
        for (var next = without(FIRST); !next.isEmpty(); next = without(next.getLast())) {
            var chunk = next;
            transaction.executeWithoutResult(status -> journal.enter(chunk));
            entered += chunk.size();
        }
        if (entered > 0) {
            log.info("{} containers that had no chain of their facts were given one", entered);
        }
    }

    private List<UUID> without(UUID after) {
        return jdbc.sql(WITHOUT).params(after, CHUNK).query(UUID.class).list();
    }
}
