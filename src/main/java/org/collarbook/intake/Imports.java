package org.collarbook.intake;

import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.UUID;

import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.intake.files.HandedIn;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.Declarations;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Takes a ledger in: keeps the file and checks it; commits it when asked to, all in one transaction. */
@Component
class Imports {

    /** What a commit does about refused rows. */
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

    /** A file that cannot be read to its end leaves nothing behind. */
    @Transactional(rollbackFor = IOException.class)
    public ImportReport check(String fileName, HandedIn file, @Nullable ColumnMap map,
            DeclarationRequest.@Nullable Checked declared, UUID by) throws IOException {
        var id = Ids.next();
        var said = declared == null ? null : declared.declaration();
        var zone = declared == null ? null : declared.zone();
        if (said != null) {
            declarations.add(said, by);
        }
        jdbc.sql("""
                insert into ledger_import (id, file_name, sha256, bytes, declaration_id, zone, state, rows_read, rows_new,
                    rows_changed, rows_unchanged, rows_refused, rule_book_hash, created_at, created_by)
                values (?, ?, '', 0, ?, ?, 'CHECKED', 0, 0, 0, 0, 0, ?, ?, ?)""")
                .params(id, fileName, said == null ? null : said.id(), zone == null ? null : zone.getId(),
                        rules.hash(), clock.instant().atOffset(ZoneOffset.UTC), by)
                .update();
        long textBytes = StoredFile.write(jdbc, id, file.text());
        jdbc.sql("update ledger_import set sha256 = ?, bytes = ?, text_bytes = ?, sheet = ? where id = ?")
                .params(file.sha256(), file.bytes(), textBytes, file.sheet(), id).update();
        maps.keep(map, id);
        run(Purpose.CHECK, terms(id, said, zone, by));
        return reports.find(id).orElseThrow();
    }

    @Transactional
    public ImportReport commit(UUID id, @Nullable String ifMatch, OnRefused onRefused, UUID by) {
        var checked = reports.lock(id).orElseThrow(() -> Problem.notFound("import").asException());
        if (checked.state() == ImportReport.State.COMMITTED) {
            throw Problem.conflict("ALREADY_COMMITTED", "This import was committed at " + checked.committedAt()
                    + ". Hand the ledger in again to load it again: what is known comes out as UNCHANGED.")
                    .asException();
        }
        new Revision(checked.version()).requireMatch(ifMatch);
        // one ledger at a time: two at once could both find the same container new
        jdbc.sql("select pg_advisory_xact_lock(hashtext('ledger commit'))").query(String.class).optional();
        var declared = checked.declaration();
        var said = declared == null ? null : declarations.find(declared.id()).orElseThrow();
        var counts = run(Purpose.COMMIT, terms(id, said, zone(id), by));
        if (onRefused == OnRefused.ABORT && counts.refused() > 0) {
            throw Problem.conflict("ROWS_REFUSED", counts.refused() + " of " + counts.read() + " rows are refused, and"
                    + " the commit was to abort in that case. Nothing was stored: mend the rows, or commit with"
                    + " \"refused\":\"SKIP\".").with("refused", counts.refused()).asException();
        }
        jdbc.sql("""
                update ledger_import set state = 'COMMITTED', committed_at = ?, committed_by = ?, version = version + 1
                where id = ?""").params(clock.instant().atOffset(ZoneOffset.UTC), by, id).update();
        return reports.find(id).orElseThrow();
    }

    private Terms terms(UUID id, @Nullable Declaration said, @Nullable ZoneId zone, UUID by) {
        return new Terms(id, said, zone, LocalDate.now(clock.withZone(zone == null ? ZoneOffset.UTC : zone)), by,
                maps.keptWith(id));
    }

    private @Nullable ZoneId zone(UUID id) {
        return jdbc.sql("select zone from ledger_import where id = ? and zone is not null").param(id)
                .query(String.class).optional().map(ZoneId::of).orElse(null);
    }

    private Outcomes.Counts run(Purpose purpose, Terms terms) {
        var counts = passes.run(purpose, StoredFile.read(jdbc, terms.importId()), terms);
        jdbc.sql("""
                update ledger_import set rows_read = ?, rows_new = ?, rows_changed = ?, rows_unchanged = ?,
                    rows_refused = ? where id = ?""")
                .params(counts.read(), counts.fresh(), counts.changed(), counts.unchanged(), counts.refused(),
                        terms.importId())
                .update();
        return counts;
    }
}
