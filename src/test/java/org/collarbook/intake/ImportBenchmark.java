package org.collarbook.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.intake.DeclarationRequest.DeclaredService;
import org.collarbook.intake.ImportReport.Rows;
import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.platform.Revision;
import org.collarbook.intake.files.LedgerFiles;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.postgresql.PGConnection;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.test.context.TestPropertySource;

/**
 * A large ledger from the file to the due months, beside a bare COPY of the very rows that came of it into copies of the
 * same tables, in one transaction, in the same run: once with the same indexes and checks, and once more with the same
 * foreign keys. {@code mvn -Pbench test -Dtest=ImportBenchmark -Dbench.containers=1000000}.
 */
@Tag("bench")
@RegisterTest
@TestPropertySource(properties = "collarbook.bench=import")
class ImportBenchmark {

    private static final List<String> TABLES = List.of("customer", "site", "site_version", "container", "movement",
            "placement", "requalification", "fill", "requirement", "journal", "journal_head");

    private final LedgerFiles files;
    private final Imports imports;
    private final LedgerJobs jobs;
    private final FlywayConnectionDetails owner;
    private final Clock clock;

    ImportBenchmark(LedgerFiles files, Imports imports, LedgerJobs jobs, FlywayConnectionDetails owner, Clock clock) {
        this.files = files;
        this.imports = imports;
        this.jobs = jobs;
        this.owner = owner;
        this.clock = clock;
    }

    @Test
    void commitBesideABareCopy(@TempDir Path folder) throws IOException, SQLException {
        long rows = Long.getLong("collarbook.bench.containers", 1_000_000);
        var file = folder.resolve("ledger.csv");
        LedgerGenerator.Written written;
        try (var out = Files.newBufferedWriter(file)) {
            written = new LedgerGenerator(1, TestClock.TODAY, rows, 0.02).writeTo(out);
        }
        var declared = new DeclarationRequest("a benchmark", LocalDate.now(clock), "invented", "US",
                "America/Chicago", true, true, null, true, true, null, null, new DeclaredService("LPG", true, true))
                .check(clock);
        var live = new LiveHeap();
        long start = System.nanoTime();
        ImportReport handedIn;
        try (var in = files.open(Files.newInputStream(file), null)) {
            handedIn = imports.handIn("ledger.csv", in, null, declared, new UUID(0, 1));
        }
        double upload = seconds(start);
        start = System.nanoTime();
        var checked = jobs.done(Purpose.CHECK, handedIn.id());
        double check = seconds(start);
        start = System.nanoTime();
        imports.commit(checked.id(), new Revision(checked.version()).etag(), Imports.OnRefused.SKIP, new UUID(0, 1));
        var committed = jobs.done(Purpose.COMMIT, checked.id());
        double commit = seconds(start);
        long heap = live.most();
        double bare = copy(folder, "bare_", false);
        double keyed = copy(folder, "keyed_", true);
        var counts = Objects.requireNonNull(committed.rows());
        Assertions.assertEquals(new Rows(rows, rows - written.spoiled(), 0, 0, written.refused(), written.ambiguous()),
                counts);
        System.out.printf(Locale.ROOT, "bench import of %d rows (%d refused, %d ambiguous, %d MB): read and stored %.0f"
                + " rows/s, check %.0f rows/s, commit in pieces %.0f rows/s; live heap at most %d MiB; COPY of what came of"
                + " it %.0f rows/s with the indexes, commit/COPY %.3f; %.0f rows/s with the foreign keys too, commit/COPY"
                + " %.3f%n", rows, counts.refused(), counts.ambiguous(), checked.bytes() / 1_000_000, rows / upload,
                rows / check, rows / commit, heap >> 20, rows / bare, bare / commit, rows / keyed, keyed / commit);
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }

    private double copy(Path folder, String prefix, boolean foreignKeys) throws SQLException, IOException {
        try (var connection = DriverManager.getConnection(owner.getJdbcUrl(), owner.getUsername(),
                owner.getPassword()); var statement = connection.createStatement()) {
            for (var table : TABLES) {
                statement.execute("create table " + prefix + table + " (like " + table + " including all)");
                try (var out = Files.newOutputStream(folder.resolve(table))) {
                    copyOut(connection, table, out);
                }
            }
            if (foreignKeys) {
                addForeignKeys(connection, prefix);
            }
            connection.setAutoCommit(false);
            long start = System.nanoTime();
            for (var table : TABLES) {
                try (var in = Files.newInputStream(folder.resolve(table))) {
                    copyIn(connection, prefix + table, in);
                }
            }
            connection.commit();
            return seconds(start);
        }
    }

    /** The same references, among the copies where the table referred to is copied. */
    private static void addForeignKeys(Connection connection, String prefix) throws SQLException {
        var keys = new ArrayList<String>();
        try (var statement = connection.createStatement();
                var found = statement.executeQuery(
                        "select conrelid::regclass::text, pg_get_constraintdef(oid) from pg_constraint where contype = 'f'")) {
            while (found.next()) {
                if (TABLES.contains(found.getString(1))) {
                    keys.add("alter table " + prefix + found.getString(1) + " add "
                            + found.getString(2).replaceAll("REFERENCES (" + String.join("|", TABLES) + ")\\(",
                                    "REFERENCES " + prefix + "$1("));
                }
            }
        }
        try (var statement = connection.createStatement()) {
            for (var key : keys) {
                statement.execute(key);
            }
        }
    }

    private static void copyOut(Connection from, String table, OutputStream to) throws SQLException, IOException {
        from.unwrap(PGConnection.class).getCopyAPI().copyOut("copy " + table + " to stdout", to);
    }

    private static void copyIn(Connection to, String table, InputStream from) throws SQLException, IOException {
        to.unwrap(PGConnection.class).getCopyAPI().copyIn("copy " + table + " from stdin", from, 1 << 16);
    }
}
