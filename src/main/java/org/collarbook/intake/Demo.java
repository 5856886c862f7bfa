package org.collarbook.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;

import org.collarbook.intake.DeclarationRequest.DeclaredService;
import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.intake.files.LedgerFiles;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** An invented distributor to look around in: its ledger goes through the import like anybody's, refused rows and
 * all; its routes follow. */
@Component
class Demo {

    private static final long SEED = 20_261;
    private static final long ROWS = 5_000;
    private static final double DIRT_SHARE = 0.02;
    private static final String ZONE = "America/Chicago";

    private final LedgerFiles files;
    private final Imports imports;
    private final LedgerJobs jobs;
    private final DemoRoutes routes;
    private final JdbcClient jdbc;
    private final Clock clock;

    Demo(LedgerFiles files, Imports imports, LedgerJobs jobs, DemoRoutes routes, JdbcClient jdbc, Clock clock) {
        this.files = files;
        this.imports = imports;
        this.jobs = jobs;
        this.routes = routes;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Refuses where anything is registered: invented containers must never stand among real ones. */
    ImportReport load(UUID by) {
        if (jdbc.sql("select exists (select from container) or exists (select from site) or exists"
                + " (select from customer)").query(Boolean.class).single()) {
            throw Problem
                    .conflict("REGISTER_NOT_EMPTY", "The demo's invented containers go into an empty register only:"
                            + " start the service on a new data folder for it.")
                    .asException();
        }
        try {
            var file = Files.createTempFile("demo-ledger", ".csv");
            try {
                return load(file, by);
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (IOException full) {
            throw new UncheckedIOException("the demo's ledger could not be written", full);
        }
    }

    private ImportReport load(Path file, UUID by) throws IOException {
        var today = LocalDate.now(clock.withZone(ZoneId.of(ZONE)));
        try (var out = Files.newBufferedWriter(file)) {
            new LedgerGenerator(SEED, today, ROWS, DIRT_SHARE).writeTo(out);
        }
        var declared = new DeclarationRequest("the demo", today, "Invented with the demo: every container of this"
                + " ledger is coated, legibly marked and in clean LP-gas service; owners consent to filling.", "US",
                ZONE, true, true, null, true, true, null, null, new DeclaredService("LPG", true, true)).check(clock);
        try (var in = files.open(Files.newInputStream(file), null)) {
            var id = imports.handIn("demo-ledger.csv", in, null, declared, by).id();
            var checked = jobs.done(Purpose.CHECK, id);
            imports.commit(id, new Revision(checked.version()).etag(), Imports.OnRefused.SKIP, by);
            var report = jobs.done(Purpose.COMMIT, id);
            routes.open(today);
            return report;
        }
    }
}
