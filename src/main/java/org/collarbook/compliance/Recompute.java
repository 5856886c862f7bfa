package org.collarbook.compliance;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.platform.Ids;
import org.collarbook.platform.Unhurried;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Assesses anew what was judged by other rules than are in force: under another book than the one loaded last, or before
 * its latest value. Such rows are the work, so a killed run needs no mark to go on from, and what a service on an older
 * book still judges is found by the next run. Of several services on one database one works at a time, in short
 * transactions, and only under the last book. What somebody else is at is passed over; the next run comes back to it. Then
 * it assesses those anew whose status has turned into another by date alone.
 */
@Component
class Recompute {

    private static final Logger log = LoggerFactory.getLogger(Recompute.class);
    private static final UUID FIRST = new UUID(0, 0);
    private static final int CHUNK = 2000;

    /** The day is that of the site, as in {@link Requirements#today}, and at most a day ahead of UTC's. */
    private static final String CHANGED = """
            select distinct r.container_id from requirement r left join site s on s.id = r.site_id
            where r.changes_on <= (:now at time zone 'UTC')::date + 1
              and r.changes_on <= (:now at time zone coalesce(s.zone, 'UTC'))::date and r.container_id > :after
            order by r.container_id limit :chunk""";

    private static final String LAST_LOADED = "(select l.rule_book_id from rule_book_load l"
            + " order by l.loaded_at desc, l.rule_book_id desc limit 1)";

    /** One row of each container: all of them are judged together. */
    private static final String STALE = " from requirement where decisive"
            + " and (rule_book_id <> :book or assessed_on < :as_of)";

    private static final String BEGIN = "insert into recompute as pass (id, rule_book_id, as_of, finished_at)"
            + " select :id, :book, cast(:as_of as date), case when not exists (select" + STALE + ") then now() end"
            + " where :book = " + LAST_LOADED + """

            on conflict on constraint recompute_once do update set finished_at = case
              when excluded.finished_at is not null then coalesce(pass.finished_at, excluded.finished_at) end""";

    private static final String TELL = """
            update recompute set done = done + :assessed,
              finished_at = case when :none and not exists (select""" + STALE + """
            ) then now() end
            where id = :pass""";

    /** What a short transaction came to, and how many of it were free. */
    private record Chunk(UUID last, int assessed) {}

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Requirements requirements;
    private final RuleBook rules;
    private final LoadedRuleBook loaded;
    private final Clock clock;

    Recompute(JdbcClient jdbc, TransactionTemplate transaction, Requirements requirements,
            RuleBook rules, LoadedRuleBook loaded, Clock clock) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.requirements = requirements;
        this.rules = rules;
        this.loaded = loaded;
        this.clock = clock;
    }

    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}", fixedDelayString = "PT10M")
    void run() {
        // a value counts once its day has begun at every site: none is judged before it
        var switched = latestSwitch(LocalDate.now(clock.withZone(ZoneOffset.ofHours(-12))));
        long before = System.nanoTime();
        long done = stale(switched);
        if (done > 0) {
            log.info("Assessed {} containers anew under rule book {} in {} s", done, rules.hash(),
                    (System.nanoTime() - before) / 1_000_000_000.0);
        }
        changed();
    }

    private long stale(LocalDate switched) {
        transaction.executeWithoutResult(status -> {
            Unhurried.go(jdbc);
            jdbc.sql(BEGIN).param("id", Ids.next()).param("book", loaded.id()).param("as_of", switched).update();
        });
        long done = 0;
        for (var chunk = next(switched, FIRST); chunk != null; chunk = next(switched, chunk.last)) {
            done += chunk.assessed;
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

    /** The next short transaction; none when nothing is left, or it is another service's. */
    private @Nullable Chunk next(LocalDate switched, UUID after) {
        return transaction.execute(status -> {
            Unhurried.go(jdbc);
            return pass(switched).map(pass -> {
                var next = staleAfter(after, switched);
                int assessed = requirements.reassessFree(next);
                jdbc.sql(TELL).param("assessed", assessed).param("none", next.isEmpty()).param("pass", pass)
                        .param("book", loaded.id()).param("as_of", switched).update();
                return next.isEmpty() ? null : new Chunk(next.getLast(), assessed);
            }).orElse(null);
        });
    }

    private Optional<UUID> pass(LocalDate switched) {
        return jdbc.sql("select id from recompute where rule_book_id = :book and as_of = :as_of and finished_at is null"
                + " and :book = " + LAST_LOADED + " for update skip locked").param("book", loaded.id())
                .param("as_of", switched).query(UUID.class).optional();
    }

    /** By the primary key, so that a run reads it once: the planner, if it expects few, reads and sorts all each time. */
    private List<UUID> staleAfter(UUID after, LocalDate switched) {
        sorting("off");
        var next = jdbc
                .sql("select container_id" + STALE + " and container_id > :after order by container_id limit :chunk")
                .param("book", loaded.id()).param("as_of", switched).param("after", after).param("chunk", CHUNK)
                .query(UUID.class).list();
        sorting("on");
        return next;
    }

    private void sorting(String setting) {
        jdbc.sql("select set_config('enable_sort', ?, true)").param(setting).query(String.class).single();
    }

    /** What turned into another word by date alone answers with it already; here its clocks follow. */
    private void changed() {
        @Nullable
        UUID done = FIRST;
        while (done != null) {
            var from = done;
            done = transaction.execute(status -> {
                Unhurried.go(jdbc);
                var next = jdbc.sql(CHANGED).param("now", OffsetDateTime.now(clock.withZone(ZoneOffset.UTC)))
                        .param("after", from).param("chunk", CHUNK).query(UUID.class).list();
                requirements.reassessFree(next);
                return next.size() < CHUNK ? null : next.getLast();
            });
        }
    }
}
