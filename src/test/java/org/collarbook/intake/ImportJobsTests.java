package org.collarbook.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;

import javax.sql.DataSource;

import org.collarbook.access.Role;
import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.platform.jobs.Claim;
import org.collarbook.platform.jobs.JobQueue;
import org.collarbook.platform.jobs.JobRun;
import org.collarbook.platform.jobs.NotOurs;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;
import org.springframework.transaction.support.TransactionTemplate;

/** Who checks and commits a ledger when services die or are slow, when it is cancelled, and when the register moves on. */
@RegisterTest
@TestPropertySource(properties = "spring.application.name=collarbook-large-ledgers")
class ImportJobsTests {

    /** Three pieces of a commit, the last not full. */
    private static final int ROWS = 25_000;

    private final Api api;
    private final Tables tables;
    private final LedgerPasses passes;
    private final LedgerJobs jobs;
    private final RunPass run;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final DataSource database;
    private final String maker = "R" + Given.serial();

    ImportJobsTests(Api api, Tables tables, LedgerPasses passes, LedgerJobs jobs, RunPass run, JdbcClient jdbc,
            TransactionTemplate transaction, DataSource database) {
        this.database = database;
        this.api = api;
        this.tables = tables;
        this.passes = passes;
        this.jobs = jobs;
        this.run = run;
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    private String ledger(int rows) {
        var csv = new StringBuilder("specification,maker,serial,manufactured,tag\r\n");
        for (int i = 0; i < rows; i++) {
            csv.append("DOT-4BA240,").append(maker).append(",N").append(i).append(",5-04,\r\n");
        }
        return csv.toString();
    }

    private long registered() {
        return jdbc.sql("select count(*) from container where maker = ?").param(maker).query(Long.class).single();
    }

    private Answer report(Answer of) {
        return api.as(Role.CLERK).get("/api/imports/" + of.id()).expect(200);
    }

    /** As by another service: queued and claimed before anybody here sees it. */
    private Claim claimedElsewhere(Purpose purpose, Answer of) {
        return Objects.requireNonNull(transaction.execute(status -> {
            passes.queue(UUID.fromString(of.id()), purpose, purpose == Purpose.COMMIT ? Imports.OnRefused.SKIP : null,
                    UUID.randomUUID());
            return passes.of(purpose).claim().orElseThrow();
        }));
    }

    private Claim takenUp(Claim dead) {
        return Objects.requireNonNull(transaction.execute(status -> {
            jdbc.sql("update ledger_pass set lease_until = now() - interval '1 second' where id = ?").param(dead.id())
                    .update();
            return passes.of(Purpose.COMMIT).claim().orElseThrow();
        }));
    }

    /** Each piece of a commit waits for its turn, and turns are given in the order in which they were asked for. */
    private static void takeTurn(Connection connection) {
        try (var statement = connection.createStatement()) {
            statement.execute("select pg_advisory_xact_lock(hashtext('ledger commit'))");
        } catch (SQLException failed) {
            throw new IllegalStateException(failed);
        }
    }

    private void untilWaiting(int forATurn) {
        for (long end = System.nanoTime() + TimeUnit.MINUTES.toNanos(2); jdbc.sql("select count(*) from pg_locks"
                + " where locktype = 'advisory' and not granted").query(Integer.class).single() < forATurn;) {
            assertThat(System.nanoTime()).as("%d never waited", forATurn).isLessThan(end);
            LockSupport.parkNanos(5_000_000);
        }
    }

    /** Begins a commit that stands still between its first piece and its second, until the other is done. */
    private void afterTheFirstPiece(Runnable begin, Runnable meanwhile) throws Exception {
        try (var before = database.getConnection(); var behind = database.getConnection()) {
            before.setAutoCommit(false);
            behind.setAutoCommit(false);
            takeTurn(before);
            begin.run();
            untilWaiting(1);
            var turn = CompletableFuture.runAsync(() -> takeTurn(behind), Thread::startVirtualThread);
            untilWaiting(2);
            before.rollback();
            turn.get(2, TimeUnit.MINUTES);
            meanwhile.run();
            behind.rollback();
        }
    }

    @Test
    void aCheckThatIsCancelledStoresNothing() {
        var checked = Ledger.checked(api, ledger(3), null);
        var claim = claimedElsewhere(Purpose.CHECK, checked);
        assertThat(passes.of(Purpose.CHECK).claim()).as("two services never do the same job").isEmpty();
        assertThat(report(checked).text("/state")).isEqualTo("CHECKING");
        var cancelled = api.as(Role.CLERK).post(report(checked).text("/links/cancel"), "").expect(200);
        assertThat(cancelled.text("/state")).isEqualTo("CANCELLED");
        assertThatThrownBy(() -> run.toItsEnd(new JobRun(passes.of(Purpose.CHECK), claim)))
                .isInstanceOf(NotOurs.class);
        assertThat(tables.count("ledger_import_outcome where pass_id = '" + claim.id() + "'")).isZero();
        api.as(Role.CLERK).post("/api/imports/" + checked.id() + "/cancel", "").expectProblem(409, "IMPORT_IS_OVER");
        Ledger.commit(api, report(checked), "SKIP").expectProblem(409, "IMPORT_NOT_CHECKED");
    }

    @Test
    void aLedgerThatWaitsTellsNoLines() throws SQLException {
        var id = Ledger.checked(api, ledger(1), null);
        try (var elsewhere = database.getConnection(); var lock = elsewhere.createStatement()) {
            elsewhere.setAutoCommit(false);
            // whoever looks for work passes over the row; it can be read, queued and cancelled
            lock.execute("select from ledger_pass where import_id = '" + id.id() + "' for key share");
            jdbc.sql("update ledger_pass set status = 'QUEUED' where import_id = ?").param(UUID.fromString(id.id()))
                    .update();
            var waiting = report(id);
            assertThat(waiting.text("/state")).isEqualTo("WAITING_FOR_CHECK");
            assertThat(waiting.at("/rows").isMissingNode()).isTrue();
            for (var asked : List.of("/lines", "/lines?format=csv")) {
                api.as(Role.CLERK).get("/api/imports/" + id.id() + asked).expectProblem(409, "IMPORT_NOT_CHECKED");
            }
            api.as(Role.CLERK).post(waiting.text("/links/cancel"), "").expect(200);
            elsewhere.rollback();
        }
    }

    @Test
    void aCommitThatIsCancelledTellsThroughWhichLineItIsStoredAndMayGoOn() throws Exception {
        var checked = Ledger.checked(api, ledger(ROWS), null);
        var asked = new AtomicReference<Answer>();
        var cancelledAt = new AtomicLong();
        afterTheFirstPiece(() -> asked.set(Ledger.commit(api, checked, "SKIP").expect(202)), () -> {
            var cancelled = api.as(Role.CLERK).post(asked.get().text("/links/cancel"), "").expect(200);
            long line = cancelled.at("/committedThroughLine").asLong();
            assertThat(line).isBetween(2L, (long) ROWS);
            assertThat(Ledger.rows(cancelled)).isEqualTo((line - 1) + "/" + (line - 1) + "/0/0/0/0");
            assertThat(cancelled.text("/rowsOf")).isEqualTo("COMMIT");
            cancelledAt.set(line);
        });
        var queued = asked.get();
        long through = cancelledAt.get();
        assertThat(queued.text("/state")).isIn("WAITING_FOR_COMMIT", "COMMITTING");
        jobs.start(Purpose.COMMIT);
        assertThat(Ledger.over(api, queued, "CANCELLED").at("/committedThroughLine").asLong()).isEqualTo(through);
        assertThat(registered()).isEqualTo(through - 1);

        var again = Ledger.committed(api, report(queued), "SKIP");
        assertThat(Ledger.rows(again)).isEqualTo(ROWS + "/" + (ROWS - through + 1) + "/0/" + (through - 1) + "/0/0");
        assertThat(registered()).isEqualTo(ROWS);
    }

    @Test
    void aCommitWhoseServiceDiedGoesOnAtItsCheckpoint() throws Exception {
        var first = new Ledger().row("maker", maker, "serial", "HAS", "tag", "T" + maker);
        first.load(api, null);
        var csv = ledger(ROWS).replaceFirst("\r\n", "\r\nDOT-4BA240," + maker + ",HAS,5-04,U" + maker + "\r\n")
                // a row of the first piece said otherwise, left out in part, and its tag taken: after the checkpoint
                + "DOT-4BA240," + maker + ",N7,5-04,X" + maker + "\r\n" + "DOT-4BA240,,N8,5-04,\r\n"
                + "DOT-4BA240," + maker + ",LAST,5-04,T" + maker + "\r\n";
        var checked = Ledger.checked(api, csv, null);
        var foretold = (ROWS + 4) + "/" + ROWS + "/1/0/0/3";
        assertThat(Ledger.rows(checked)).isEqualTo(foretold);

        var claim = claimedElsewhere(Purpose.COMMIT, checked);
        var queue = passes.of(Purpose.COMMIT);
        var dying = new CompletableFuture<Void>();
        var taken = new AtomicReference<Claim>();
        afterTheFirstPiece(
                () -> dying.completeAsync(() -> {
                    run.toItsEnd(new JobRun(queue, claim));
                    return null;
                }, Thread::startVirtualThread), () -> taken.set(takenUp(claim)));
        var next = taken.get();
        assertThat(next.attempt()).isEqualTo(2);
        assertThat(dying).failsWithin(2, TimeUnit.MINUTES).withThrowableThat().withCauseInstanceOf(NotOurs.class);
        long before = report(checked).at("/committedThroughLine").asLong();
        assertThat(before).isLessThan(ROWS);
        assertThat(registered()).isEqualTo(before - 1);

        run.toItsEnd(new JobRun(queue, next));
        var committed = Ledger.over(api, checked, "COMMITTED");
        assertThat(Ledger.rows(committed)).isEqualTo(foretold);
        assertThat(committed.at("/progress/attempt").asInt()).isEqualTo(2);
        assertThat(registered()).isEqualTo(ROWS + 1);
        assertThat(tables.count("(select generate_series(first_line, last_line) from ledger_import_outcome"
                + " where pass_id = '" + claim.id() + "') as lines")).as("every line once").isEqualTo(ROWS + 4);
        assertThat(committed.at("/problems").findValuesAsString("code")).containsExactly("TWICE_IN_FILE",
                "MAY_BE_ANOTHER", "TAG_IN_USE");
        assertThat(tables.count("ledger_claim")).isZero();

        var digest = tables.digest();
        // but for the last, whose tag nobody has by now
        var same = csv.substring(0, csv.lastIndexOf("DOT"));
        var again = Ledger.committed(api, Ledger.checked(api, same, null), "SKIP");
        assertThat(Ledger.rows(again)).isEqualTo((ROWS + 3) + "/0/0/" + (ROWS + 1) + "/0/2");
        assertThat(tables.digest()).isEqualTo(digest);
    }

    @Test
    void aCommitOfAllOrNoneIsOneTransaction() {
        var tag = "T" + maker;
        var csv = ledger(LedgerPass.BATCH + 1) + "DOT-4BA240," + maker + ",LAST,5-04," + tag + "\r\n";
        var checked = Ledger.checked(api, csv, null);
        var other = Given.cylinder();
        other.put("tag", tag);
        api.as(Role.CLERK).post("/api/containers", other).expect(201);
        var digest = tables.digest();
        Ledger.commit(api, checked, "ABORT").expect(202);
        var failed = Ledger.over(api, checked, "FAILED");
        assertThat(failed.text("/failure/code")).isEqualTo("ROWS_REFUSED");
        assertThat(failed.text("/failure/detail")).contains("line " + (LedgerPass.BATCH + 3), "AMBIGUOUS",
                "TAG_IN_USE");
        assertThat(failed.at("/committedThroughLine").isMissingNode()).isTrue();
        assertThat(tables.digest()).isEqualTo(digest);

        var skipped = Ledger.committed(api, failed, "SKIP");
        assertThat(Ledger.rows(skipped)).isEqualTo((LedgerPass.BATCH + 2) + "/" + (LedgerPass.BATCH + 1) + "/0/0/0/1");
    }

    @Test
    void aPassThatKillsWhoeverRunsItIsGivenUpAndACommitMayBeAskedForAgain() {
        var checked = Ledger.checked(api, ledger(1), null);
        var claim = claimedElsewhere(Purpose.COMMIT, checked);
        jdbc.sql("update ledger_pass set in_vain = ?, lease_until = now() - interval '1 second' where id = ?")
                .params(JobQueue.ATTEMPTS, claim.id()).update();
        jobs.start(Purpose.COMMIT);
        assertThat(Ledger.over(api, checked, "FAILED").text("/failure/code")).isEqualTo("GIVEN_UP");
        assertThat(Ledger.rows(Ledger.committed(api, report(checked), "ABORT"))).isEqualTo("1/1/0/0/0/0");
    }

    @Test
    void onlyAttemptsThatStoreNothingCountAgainstACommit() {
        var checked = Ledger.checked(api, ledger(1), null);
        var claim = claimedElsewhere(Purpose.COMMIT, checked);
        var queue = passes.of(Purpose.COMMIT);
        for (int killed = 0; killed < 2 * JobQueue.ATTEMPTS; killed++) {
            assertThat(queue.keep(claim, LedgerPasses.passed(killed, killed))).isTrue();
            claim = takenUp(claim);
        }
        for (int killed = 1; killed < JobQueue.ATTEMPTS; killed++) {
            assertThat(queue.renew(claim, LedgerPasses.passed(0, 0))).as("a beat alone is no progress").isTrue();
            claim = takenUp(claim);
        }
        jdbc.sql("update ledger_pass set lease_until = now() - interval '1 second' where id = ?").param(claim.id())
                .update();
        jobs.start(Purpose.COMMIT);
        var failed = Ledger.over(api, checked, "FAILED");
        assertThat(failed.text("/failure/code")).isEqualTo("GIVEN_UP");
        assertThat(failed.text("/failure/detail")).contains("begun 9 times", "the last 3 times");
    }

    @Test
    void progressIsSeenWhileThePassIsWithinItsTransaction() {
        var checked = Ledger.checked(api, ledger(1), null);
        var claim = claimedElsewhere(Purpose.CHECK, checked);
        var job = new JobRun(passes.of(Purpose.CHECK), claim);
        transaction.executeWithoutResult(status -> {
            job.tell(LedgerPasses.passed(1, 40));
            CompletableFuture.runAsync(job::beat).join();
            assertThat(report(checked).at("/progress/rows").asLong()).isEqualTo(1);
            assertThat(report(checked).at("/progress/bytes").asLong()).isEqualTo(40);
        });
        run.toItsEnd(job);
    }
}
