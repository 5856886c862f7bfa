package org.collarbook.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

import org.collarbook.platform.BulkCopy;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Runs a ledger through a check or a commit, in the transaction of whoever asks. */
@Component
class LedgerPasses {

    /** What a pass is for; also the word that its report is kept under. */
    enum Purpose {
        CHECK,
        COMMIT
    }

    private final RegisterView view;
    private final KnownPlaces places;
    private final CheckOnly check;
    private final IntoRegister commit;
    private final BulkCopy copy;
    private final JdbcClient jdbc;

    LedgerPasses(RegisterView view, KnownPlaces places, CheckOnly check, IntoRegister commit, BulkCopy copy,
            JdbcClient jdbc) {
        this.view = view;
        this.places = places;
        this.check = check;
        this.commit = commit;
        this.copy = copy;
        this.jdbc = jdbc;
    }

    @Transactional(propagation = Propagation.MANDATORY)
    Outcomes.Counts run(Purpose purpose, InputStream file, Terms terms) {
        open();
        var sink = switch (purpose) {
            case CHECK -> check;
            case COMMIT -> commit;
        };
        try {
            var counts = new LedgerPass(view, places, new Claims(jdbc), new Outcomes(copy, terms, purpose.name()), sink,
                    terms).over(file);
            close();
            return counts;
        } catch (IOException gone) {
            throw new UncheckedIOException("the ledger could not be read to its end", gone);
        }
    }

    /**
     * The planner knows nothing of rows written a moment ago by the same transaction, so that a plan made for an empty table
     * would be kept for a full one: every look-up of a batch is told to go by index.
     */
    private void open() {
        jdbc.sql("""
                select set_config('enable_seqscan', 'off', true),
                    set_config('jit', 'off', true)""").query((row, n) -> "").list();
        jdbc.sql("create temporary table ledger_seen (digest uuid primary key, line bigint not null) on commit drop")
                .update();
        jdbc.sql("create temporary table ledger_customer (code text primary key, name text not null) on commit drop")
                .update();
        jdbc.sql("""
                create temporary table ledger_site (code text primary key, name text not null, kind text not null,
                    customer text, latitude float8, longitude float8, zone text not null, jurisdiction text not null,
                    address text) on commit drop""").update();
    }

    private void close() {
        jdbc.sql("drop table if exists ledger_seen, ledger_customer, ledger_site").update();
    }
}
