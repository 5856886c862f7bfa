package org.collarbook.compliance;

import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.custody.Places;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Unhurried;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Judges what stands at a site that changed. What nobody else is at is judged in the transaction that changed it. What was
 * held then may be judged by the site as it was; it follows in short transactions. Once no transaction can be under way
 * that had not seen the change, all is judged once more but what the change judged itself, and with that it is over. To
 * wait for it instead, with the site in hand, could stop a ledger and the change for good: the ledger holds containers of
 * its earlier batches while it waits for the site of a later one.
 */
@Component
class SiteSweep {

    private static final Logger log = LoggerFactory.getLogger(SiteSweep.class);
    private static final int CHUNK = 500;

    /**
     * Judged by a transaction that may have read the site as it was. A reading of a gauge marks a row and judges nothing,
     * so the customer is compared besides; at last all count that were not judged by the change itself.
     */
    private static final String IN_DOUBT = """
            select distinct r.container_id
            from requirement r join site_sweep w on w.id = :sweep join site s on s.id = w.site_id
            where r.container_id = any (:there)
              and (r.changed_by <> w.changed_by and (:all or r.changed_by < w.unseen_below)
                or r.site_id = s.id and r.customer_id is distinct from s.customer_id)
            order by r.container_id""";

    private record Sweep(UUID id, UUID siteId) {}

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
        jdbc.sql("select id, site_id from site_sweep order by id").query(Sweep.class).list().forEach(this::goOn);
    }

    /** What fails is gone on with in the next round, and the others in this one. */
    private void goOn(Sweep sweep) {
        try {
            over(sweep);
        } catch (RuntimeException failed) {
            log.error("Site {} changed; judging what stands there was interrupted and goes on later", sweep.siteId,
                    failed);
        }
    }

    /** Those that are still held are left to the next round. */
    private void over(Sweep sweep) {
        // asked before the rows are: whatever was committed by then is among them
        boolean seenByAll = jdbc.sql("""
                update site_sweep set unseen_below = coalesce(unseen_below, pg_snapshot_xmax(pg_current_snapshot()))
                where id = ? returning unseen_below <= pg_snapshot_xmin(pg_current_snapshot())""").param(sweep.id)
                .query(Boolean.class).optional().orElse(false);
        var inDoubt = inDoubt(sweep, seenByAll);
        boolean free = true;
        for (int from = 0; from < inDoubt.size(); from += CHUNK) {
            free &= judge(inDoubt.subList(from, Math.min(from + CHUNK, inDoubt.size())));
        }
        if (seenByAll && free) {
            jdbc.sql("delete from site_sweep where id = ?").param(sweep.id).update();
        }
    }

    private List<UUID> inDoubt(Sweep sweep, boolean all) {
        return Objects.requireNonNull(transaction.execute(status -> {
            Unhurried.go(jdbc);
            return jdbc.sql(IN_DOUBT).param("sweep", sweep.id)
                    .param("there", places.containersAt(sweep.siteId).toArray(UUID[]::new)).param("all", all)
                    .query(UUID.class).list();
        }));
    }

    /** Whether all of them were free. */
    private boolean judge(List<UUID> chunk) {
        return Boolean.TRUE.equals(transaction.execute(status -> {
            Unhurried.go(jdbc);
            return requirements.reassessFree(chunk) == chunk.size();
        }));
    }
}
