package org.collarbook.compliance;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
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
 * killed pass goes on; of several services on one database, one walks at a time, and only under the book that was loaded
 * last. What somebody else is at is passed over and looked for when the walk is over: it is not finished before every row
 * was judged by its rules. Then it assesses those anew whose status has turned into another by date alone.
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

    private static final String LAST_LOADED = "(select l.rule_book_id from rule_book_load l"
            + " order by l.loaded_at desc, l.rule_book_id desc limit 1)";

    /** Another book that was loaded since may have judged anything: the walk begins again. */
    private static final String BEGIN = """
            insert into recompute as pass (id, rule_book_id, as_of)
            select :id, :book, cast(:as_of as date) where :book =\s""" + LAST_LOADED + """

            on conflict on constraint recompute_once
              do update set after_container = null, done = 0, started_at = now(), finished_at = null
              where exists (select from rule_book_load l
                where l.rule_book_id <> pass.rule_book_id and l.loaded_at > pass.started_at)""";

    /** Judged by other rules, or by these before their latest value was in force. */
    private static final String STALE = " from requirement r where (r.rule_book_id <> :book or r.assessed_on < :as_of)";

    /** A pass that is not finished. */
    private record Pass(UUID id, @Nullable UUID afterContainer) {}

    /** What a short transaction looked at, and how many of it were free; no last one: there was nothing left. */
    private record Chunk(@Nullable UUID last, int assessed) {

        static Chunk of(List<UUID> ids, int assessed) {
            return new Chunk(ids.isEmpty() ? null : ids.getLast(), assessed);
        }
    }

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
        jdbc.sql(BEGIN).param("id", Ids.next()).param("book", loaded.id()).param("as_of", switched).update();
        long before = System.nanoTime();
        long done = all(switched);
        if (done > 0) {
            log.info("Assessed {} containers anew under rule book {} in {} s", done, rules.hash(),
                    (System.nanoTime() - before) / 1_000_000_000.0);
        }
        changed();
    }

    /** The walk, and once it is over what it passed over. */
    private long all(LocalDate switched) {
        long done = 0;
        var chunk = walk(switched);
        while (chunk != null && chunk.last != null) {
            done += chunk.assessed;
            chunk = walk(switched);
        }
        for (var left = chunk == null ? null : left(switched, new UUID(0, 0)); left != null
                && left.last != null; left = left(switched, left.last)) {
            done += left.assessed;
        }
        return done;
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

    /** The next short transaction of the walk; none when the pass is finished or another service's. */
    private @Nullable Chunk walk(LocalDate switched) {
        return transaction.execute(status -> pass(switched).map(pass -> {
            var next = containers.after(pass.afterContainer(), CHUNK);
            int assessed = requirements.reassessFree(next);
            jdbc.sql(
                    "update recompute set done = done + ?, after_container = coalesce(?, after_container) where id = ?")
                    .params(assessed, next.isEmpty() ? null : next.getLast(), pass.id()).update();
            return Chunk.of(next, assessed);
        }).orElse(null));
    }

    /** The same of what the walk passed over; with nothing of it left the pass is finished, else it is come back to. */
    private @Nullable Chunk left(LocalDate switched, UUID after) {
        return transaction.execute(status -> pass(switched).map(pass -> {
            var next = jdbc.sql("select distinct r.container_id" + STALE + """
                     and r.container_id > :after order by r.container_id limit :chunk""").param("book", loaded.id())
                    .param("as_of", switched).param("after", after).param("chunk", CHUNK).query(UUID.class).list();
            int assessed = requirements.reassessFree(next);
            jdbc.sql(
                    "update recompute set done = done + :assessed, finished_at = case when :last and not exists (select"
                            + STALE + ") then now() end where id = :id")
                    .param("assessed", assessed)
                    .param("last", next.isEmpty()).param("book", loaded.id()).param("as_of", switched)
                    .param("id", pass.id()).update();
            return Chunk.of(next, assessed);
        }).orElse(null));
    }

    private Optional<Pass> pass(LocalDate switched) {
        return jdbc.sql("""
                select id, after_container from recompute
                where rule_book_id = :book and as_of = :as_of and finished_at is null and :book =\s""" + LAST_LOADED
                + " for update skip locked").param("book", loaded.id()).param("as_of", switched).query(Pass.class)
                .optional();
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
                requirements.reassessFree(next);
                return next.size() < CHUNK ? null : next.getLast();
            });
        }
    }
}
