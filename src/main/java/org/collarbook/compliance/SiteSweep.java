package org.collarbook.compliance;

import java.util.List;
import java.util.UUID;

import org.collarbook.custody.Places;
import org.collarbook.platform.Ids;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Judges what stands at a site that changed. What nobody else is at is judged in the transaction that changed it. What was
 * held then may be judged by the site as it was; it follows in short transactions, and that is over once no transaction
 * can be under way that had not seen the change. To wait for it instead, with the site in hand, could stop a ledger and
 * the change for good: the ledger holds containers of its earlier batches while it waits for the site of a later one.
 */
@Component
class SiteSweep {

    private static final UUID FIRST = new UUID(0, 0);
    private static final int CHUNK = 500;

    /**
     * Judged by a transaction that may have read the site as it was. What changes no judgement marks a row as well, so the
     * customer is compared besides.
     */
    private static final String UNSEEN = """
            from requirement r join site_sweep w on w.id = ? join site s on s.id = w.site_id
            where r.container_id in (select p.container_id from placement p where p.site_id = w.site_id
                union select k.container_id from place_claim k where k.site_id = w.site_id)
              and (r.changed_by <> w.changed_by and r.changed_by < w.unseen_below
                or r.site_id = s.id and r.customer_id is distinct from s.customer_id)""";

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Places places;
    private final Requirements requirements;

    SiteSweep(JdbcClient jdbc, TransactionTemplate transaction, Places places, Requirements requirements) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.places = places;
        this.requirements = requirements;
    }

    @Transactional(propagation = Propagation.MANDATORY)
    void begin(UUID site) {
        jdbc.sql("insert into site_sweep (id, site_id) values (?, ?)").params(Ids.next(), site).update();
        requirements.reassessFree(places.containersAt(site));
    }

    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}", fixedDelayString = "PT10S")
    void run() {
        jdbc.sql("select id from site_sweep order by id").query(UUID.class).list().forEach(this::over);
    }

    private void over(UUID sweep) {
        jdbc.sql("update site_sweep set unseen_below = pg_snapshot_xmax(pg_current_snapshot())"
                + " where id = ? and unseen_below is null").param(sweep).update();
        // asked before the walk: whatever was committed by then is found by it
        boolean seenByAll = jdbc.sql("select exists (select from site_sweep where id = ?"
                + " and unseen_below <= pg_snapshot_xmin(pg_current_snapshot()))").param(sweep).query(Boolean.class)
                .single();
        @Nullable
        UUID after = FIRST;
        while (after != null) {
            after = next(sweep, after);
        }
        if (seenByAll) {
            jdbc.sql("delete from site_sweep where id = ? and not exists (select " + UNSEEN + ")")
                    .params(sweep, sweep).update();
        }
    }

    /** Those that are still held are left to the next round. */
    private @Nullable UUID next(UUID sweep, UUID after) {
        return transaction.execute(status -> {
            List<UUID> next = jdbc.sql("select distinct r.container_id " + UNSEEN
                    + " and r.container_id > ? order by r.container_id limit ?").params(sweep, after, CHUNK)
                    .query(UUID.class).list();
            requirements.reassessFree(next);
            return next.size() < CHUNK ? null : next.getLast();
        });
    }
}
