package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.TimeUnit;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.holds.HoldReason;
import org.collarbook.holds.Holds;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.collarbook.testing.UnderWay;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** A fact that is being recorded while the register is assessed anew is not judged away, nor waited for. */
@RegisterTest
class RecomputeRaceTests {

    private static final Caller CALLER = new Caller(UUID.randomUUID(), "yard", Set.of(Role.YARD),
            CustomerScope.EVERYONE);

    private final Given given;
    private final Recompute recompute;
    private final LoadedRuleBook loaded;
    private final Holds holds;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final TestClock clock;

    RecomputeRaceTests(Given given, Recompute recompute, LoadedRuleBook loaded, Holds holds, JdbcClient jdbc,
            TransactionTemplate transaction,
            TestClock clock) {
        this.given = given;
        this.recompute = recompute;
        this.loaded = loaded;
        this.holds = holds;
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.clock = clock;
    }

    private UnderWay aHold(UUID id) {
        return new UnderWay(transaction, jdbc,
                () -> holds.place(id, HoldReason.DENTED, null, clock.instant().minusSeconds(60), CALLER));
    }

    private String standing(UUID id) {
        return jdbc.sql("select standing from requirement where container_id = ? and decisive").param(id)
                .query(String.class).single();
    }

    private int book(UUID id) {
        return jdbc.sql("select rule_book_id from requirement where container_id = ? and decisive").param(id)
                .query(Integer.class).single();
    }

    private boolean finished() {
        return jdbc.sql("""
                select finished_at is not null from recompute
                where rule_book_id = ? and as_of <= ? order by as_of desc limit 1""")
                .params(loaded.id(), LocalDate.now(clock)).query(Boolean.class).single();
    }

    private void judgedByAnOlderBook(UUID... ids) {
        jdbc.sql("update requirement set rule_book_id = 0 where container_id = any (?)").param(ids).update();
    }

    @Test
    void aRunPassesOverWhatIsBeingChangedAndComesBackToIt() throws Exception {
        var busy = given.registered();
        var free = given.registered();
        given.moved(free, given.site(null), "2026-11-20T09:00:00Z");
        recompute.run();
        assertThat(finished()).isTrue();
        judgedByAnOlderBook(busy, free);
        try (var hold = aHold(busy)) {
            var run = hold.meets(recompute::run);
            assertThat(run.isDone()).as("nobody is waited for").isTrue();
            run.get(30, TimeUnit.SECONDS);
            assertThat(book(free)).as("the others are done").isPositive();
            assertThat(book(busy)).isZero();
            assertThat(finished()).isFalse();
            hold.commit();
        }
        assertThat(standing(busy)).isEqualTo("ON_HOLD");
        assertThat(standing(free)).isEqualTo("DUE");
        // as if whoever was at it had judged it by another book, or had judged nothing
        judgedByAnOlderBook(busy);
        recompute.run();
        assertThat(book(busy)).isPositive();
        assertThat(standing(busy)).isEqualTo("ON_HOLD");
        assertThat(finished()).isTrue();
    }

    /** The hold commits after the run has begun: however the two meet, it stands. */
    @Test
    void aHoldThatCommitsMeanwhileStands() throws Exception {
        var id = given.registered();
        recompute.run();
        judgedByAnOlderBook(id);
        try (var hold = aHold(id)) {
            var run = hold.meets(recompute::run);
            hold.commit();
            run.get(30, TimeUnit.SECONDS);
        }
        assertThat(standing(id)).isEqualTo("ON_HOLD");
    }

    @Test
    void whatChangesByDateAloneIsNotJudgedWithoutAHoldEither() throws Exception {
        var body = Given.cylinder();
        body.put("specification", "DOT-3HT1850");
        body.put("manufactured", "2003-01");
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        clock.set(LocalDate.of(2027, 1, 31));
        recompute.run();
        try (var hold = aHold(id)) {
            clock.set(LocalDate.of(2027, 2, 2));
            var run = hold.meets(recompute::run);
            hold.commit();
            run.get(30, TimeUnit.SECONDS);
        }
        recompute.run();
        assertThat(reasons(id)).contains("ON_HOLD");
        assertThat(standing(id)).isEqualTo("CONDEMNED");
    }

    private String reasons(UUID id) {
        return jdbc.sql("select reasons::text from requirement where container_id = ? and decisive").param(id)
                .query(String.class).single();
    }
}
