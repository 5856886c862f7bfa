package org.collarbook.intake;

import java.io.IOException;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.UUID;

import org.collarbook.intake.ImportReport.State;
import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.intake.files.HandedIn;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.collarbook.registry.Declarations;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Takes a ledger in: keeps the file and queues its check; queues its commit when asked to. */
@Component
class Imports {

    /** What a commit does about rows that are not taken. */
    enum OnRefused {
        SKIP,
        ABORT
    }

    private final LedgerPasses passes;
    private final ImportReports reports;
    private final Declarations declarations;
    private final ColumnMaps maps;
    private final RuleBook rules;
    private final JdbcClient jdbc;
    private final Clock clock;

    Imports(LedgerPasses passes, ImportReports reports, Declarations declarations, ColumnMaps maps,
            RuleBook rules, JdbcClient jdbc, Clock clock) {
        this.passes = passes;
        this.reports = reports;
        this.declarations = declarations;
        this.maps = maps;
        this.rules = rules;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** The file is read once for its structure, and stored while it is; one that cannot be read to its end leaves nothing. */
    @Transactional(rollbackFor = IOException.class)
    public ImportReport handIn(String fileName, HandedIn file, @Nullable ColumnMap map,
            DeclarationRequest.@Nullable Checked declared, UUID by) throws IOException {
        var id = Ids.next();
        var said = declared == null ? null : declared.declaration();
        var zone = declared == null ? null : declared.zone();
        if (said != null) {
            declarations.add(said, by);
        }
        jdbc.sql("""
                insert into ledger_import (id, file_name, sha256, bytes, declaration_id, zone, rule_book_hash, created_at,
                    created_by)
                values (?, ?, '', 0, ?, ?, ?, ?, ?)""")
                .params(id, fileName, said == null ? null : said.id(), zone == null ? null : zone.getId(),
                        rules.hash(), clock.instant().atOffset(ZoneOffset.UTC), by)
                .update();
        long textBytes = store(id, file, map);
        jdbc.sql("update ledger_import set sha256 = ?, bytes = ?, text_bytes = ?, sheet = ? where id = ?")
                .params(file.sha256(), file.bytes(), textBytes, file.sheet(), id).update();
        maps.keep(map, id);
        passes.queue(id, Purpose.CHECK, null, by);
        return reports.known(id);
    }

    private long store(UUID id, HandedIn file, @Nullable ColumnMap map) throws IOException {
        var storing = new StoredFile.Storing(jdbc, id, file.text());
        try (var reader = new LedgerReader(storing, map)) {
            var row = reader.next();
            while (row != null) {
                row = reader.next();
            }
        }
        return storing.stored();
    }

    @Transactional
    public ImportReport commit(UUID id, @Nullable String ifMatch, OnRefused onRefused, UUID by) {
        var checked = locked(id);
        if (checked.state() == State.COMMITTED) {
            throw Problem.conflict("ALREADY_COMMITTED", "This import was committed at " + checked.committedAt()
                    + ". Hand the ledger in again to load it again: what is known comes out as UNCHANGED.")
                    .asException();
        }
        var rows = checked.rows();
        if (!checked.canBeCommitted() || rows == null) {
            throw Problem
                    .conflict("IMPORT_NOT_CHECKED", "This import is " + checked.state() + ": it can be committed once"
                            + " it is CHECKED, and again after a commit that failed or was cancelled.")
                    .asException();
        }
        new Revision(checked.version()).requireMatch(ifMatch);
        if (onRefused == OnRefused.ABORT && rows.notTaken() > 0) {
            throw Problem.conflict("ROWS_REFUSED", rows.refused() + " of " + rows.read() + " rows are refused and "
                    + rows.ambiguous() + " ambiguous, and the commit was to be of all rows or none. Nothing was stored:"
                    + " mend the rows, or commit with \"refused\":\"SKIP\".").with("refused", rows.refused())
                    .with("ambiguous", rows.ambiguous()).asException();
        }
        passes.queue(id, Purpose.COMMIT, onRefused, by);
        return reports.known(id);
    }

    /** What pieces of a commit are stored stay; the report tells through which line. */
    @Transactional
    public ImportReport cancel(UUID id) {
        var before = locked(id);
        if (!passes.of(before.pass()).cancel(before.latestPass())) {
            throw Problem.conflict("IMPORT_IS_OVER", "This import is " + before.state()
                    + ": only a check or a commit that waits or is under way can be cancelled.").asException();
        }
        return reports.known(id);
    }

    /** Held against other commits of the same import until the transaction ends. */
    private ImportReport locked(UUID id) {
        jdbc.sql("select id from ledger_import where id = ? for update").param(id).query(UUID.class).optional();
        return reports.known(id);
    }
}
