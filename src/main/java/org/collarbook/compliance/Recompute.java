package org.collarbook.compliance;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.platform.Ids;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Assesses the whole register anew when the rules have changed: another rule book was loaded, or a value that lay ahead
 * has come into force. It walks by container id in short transactions, each of which also moves the mark from which a
 * killed pass goes on; of several services on one database, one walks at a time. Then it assesses those anew whose status
 * has turned into another by date alone.
 */
@Component
class Recompute {

    private static final Logger log = LoggerFactory.getLogger(Recompute.class);
    private static final int CHUNK = 2000;

    /** The day is that of the site, as in {@link Requirements#today}, and at most a day ahead of UTC's. */
    private static final String CHANGED = """
            select distinct r.container_id from requirement r left join site s on s.id = r.site_id
            where r.changes_on <= (:now at time zone 'UTC')::date + 1
              and r.changes_on <= (:now at time zone coalesce(s.zone, 'UTC'))::date and r.container_id > :after
            order by r.container_id limit :chunk""";

    /** A pass that is not finished. */
    private record Pass(UUID id, @Nullable UUID afterContainer) {}

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final KnownContainers containers;
    private final Requirements requirements;
    private final RuleBook rules;
    private final LoadedRuleBook loaded;
    private final Clock clock;

    Recompute(JdbcClient jdbc, TransactionTemplate transaction, KnownContainers containers, Requirements requirements,
            RuleBook rules, LoadedRuleBook loaded, Clock clock) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
        this.loaded = loaded;
        this.clock = clock;
    }

    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}", fixedDelayString = "PT10M")
    void run() {
        // a walk is made once, so it waits until the day has begun at every site
        var switched = latestSwitch(LocalDate.now(clock.withZone(ZoneOffset.ofHours(-12))));
        jdbc.sql("""
                insert into recompute (id, rule_book_id, as_of) values (?, ?, ?)
                on conflict on constraint recompute_once do nothing""").params(Ids.next(), loaded.id(), switched)
                .update();
        long before = System.nanoTime();
        long done = 0;
        for (int chunk = chunk(switched); chunk > 0; chunk = chunk(switched)) {
            done += chunk;
        }
        if (done > 0) {
            log.info("Assessed {} containers anew under rule book {} in {} s", done, rules.hash(),
                    (System.nanoTime() - before) / 1_000_000_000.0);
        }
        changed();
    }

    /** The last day on or before this one on which some value of the rule book started or ended. */
    private LocalDate latestSwitch(LocalDate today) {
        var latest = LocalDate.of(1900, 1, 1);
        for (var next = rules.nextSwitchAfter(latest); next != null && !next.isAfter(today); next = rules
                .nextSwitchAfter(latest)) {
            latest = next;
        }
        return latest;
    }

    /** How many containers the next short transaction assessed; none when the pass is over or another service's. */
    private int chunk(LocalDate switched) {
        Integer done = transaction.execute(status -> pass(switched).map(pass -> {
            var next = containers.after(pass.afterContainer(), CHUNK);
            requirements.write(next);
            jdbc.sql("""
                    update recompute set done = done + ?, after_container = coalesce(?, after_container),
                        finished_at = case when ? then now() end where id = ?""")
                    .params(next.size(), next.isEmpty() ? null : next.getLast().id(), next.isEmpty(), pass.id())
                    .update();
            return next.size();
        }).orElse(0));
        return done == null ? 0 : done;
    }

    private Optional<Pass> pass(LocalDate switched) {
        return jdbc.sql("""
                select id, after_container from recompute
                where rule_book_id = ? and as_of = ? and finished_at is null for update skip locked""")
                .params(loaded.id(), switched).query(Pass.class).optional();
    }

    /** What turned into another word by date alone answers with it already; here its clocks follow. */
    private void changed() {
        @Nullable
        UUID done = new UUID(0, 0);
        while (done != null) {
            var from = done;
            done = transaction.execute(status -> {
                var next = jdbc.sql(CHANGED).param("now", OffsetDateTime.now(clock.withZone(ZoneOffset.UTC)))
                        .param("after", from).param("chunk", CHUNK).query(UUID.class).list();
                requirements.reassess(next);
                return next.size() < CHUNK ? null : next.getLast();
            });
        }
    }
}
