package org.collarbook.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.UUID;

import org.collarbook.intake.LedgerPasses.Pass;
import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.platform.BulkCopy;
import org.collarbook.platform.Unhurried;
import org.collarbook.platform.jobs.JobRun;
import org.collarbook.platform.jobs.NotOurs;
import org.collarbook.registry.Declarations;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Runs a ledger through a check or a commit. A check, and a commit of all rows or none, is one transaction. A commit that
 * skips what is not taken goes in pieces: the rows of a piece, what became of them, what they laid claim to and the line
 * through which the ledger is stored are one transaction, so whoever goes on after a kill goes on from there.
 */
@Component
class RunPass {

    /** So many batches are a piece: large enough that its commit costs little, small enough to lose. */
    private static final int BATCHES_IN_A_PIECE = 5;

    private final LedgerPasses passes;
    private final RegisterView view;
    private final KnownPlaces places;
    private final CheckOnly check;
    private final IntoRegister commit;
    private final Declarations declarations;
    private final ColumnMaps maps;
    private final BulkCopy copy;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Clock clock;

    RunPass(LedgerPasses passes, RegisterView view, KnownPlaces places, CheckOnly check, IntoRegister commit,
            Declarations declarations, ColumnMaps maps, BulkCopy copy, JdbcClient jdbc, TransactionTemplate transaction,
            Clock clock) {
        this.passes = passes;
        this.view = view;
        this.places = places;
        this.check = check;
        this.commit = commit;
        this.declarations = declarations;
        this.maps = maps;
        this.copy = copy;
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.clock = clock;
    }

    void toItsEnd(JobRun job) {
        var pass = passes.find(job.claim().id());
        var terms = terms(pass);
        try (var file = StoredFile.read(jdbc, pass.importId());
                var walk = new LedgerPass(pass, terms, file, settle(pass, terms), new Outcomes(copy, pass))) {
            boolean more = true;
            while (more) {
                more = Boolean.TRUE.equals(transaction.execute(status -> piece(job, pass, walk)));
            }
        } catch (IOException gone) {
            throw new UncheckedIOException("the ledger could not be read to its end", gone);
        }
        forgetWhatIsOver();
    }

    private void forgetWhatIsOver() {
        transaction.executeWithoutResult(status -> {
            Unhurried.go(jdbc);
            Claims.forgetWhatIsOver(jdbc);
        });
    }

    /** False when the ledger is at its end. */
    private boolean piece(JobRun job, Pass pass, LedgerPass walk) {
        open(pass);
        boolean more = walk.advance(pass.isInPieces() ? BATCHES_IN_A_PIECE : Integer.MAX_VALUE, job);
        var stored = walk.stored();
        var queue = passes.of(pass.purpose());
        // also false where the pass was cancelled meanwhile or is another's: then this piece was not
        if (!(more ? queue.keep(job.claim(), stored) : queue.finish(job.claim(), stored))) {
            throw new NotOurs();
        }
        return more;
    }

    /**
     * One ledger at a time goes into the register: two at once could both find the same container new. The planner knows
     * nothing of rows written a moment ago by the same transaction, so that a plan made for an empty table would be kept for
     * a full one: every look-up of a batch is told to go by index.
     */
    private void open(Pass pass) {
        jdbc.sql("""
                select set_config('enable_seqscan', 'off', true), set_config('jit', 'off', true),\s"""
                + Unhurried.SETTING).query((row, n) -> "").list();
        if (pass.purpose() == Purpose.COMMIT) {
            jdbc.sql("select pg_advisory_xact_lock(hashtext('ledger commit'))").query(String.class).optional();
        } else {
            KnownPlaces.openForetold(jdbc);
        }
        if (!pass.isInPieces()) {
            Claims.openOfOneTransaction(jdbc);
        }
    }

    private SettleBatch settle(Pass pass, Terms terms) {
        var claims = new Claims(jdbc, pass.number(), pass.isInPieces());
        return switch (pass.purpose()) {
            case CHECK -> new SettleBatch(view, places, claims, check, terms, null);
            case COMMIT -> new SettleBatch(view, places, claims, commit, terms,
                    new Foretold(jdbc, pass.importId()));
        };
    }

    private Terms terms(Pass pass) {
        var found = jdbc.sql("select declaration_id, zone from ledger_import where id = ?").param(pass.importId())
                .query(Declared.class).single();
        var zone = found.zone == null ? null : ZoneId.of(found.zone);
        return new Terms(pass.importId(), found.declarationId == null
                ? null
                : declarations.find(found.declarationId).orElseThrow(), zone,
                LocalDate.now(clock.withZone(zone == null ? ZoneOffset.UTC : zone)), pass.requestedBy(),
                maps.keptWith(pass.importId()));
    }

    private record Declared(@Nullable UUID declarationId, @Nullable String zone) {}
}
