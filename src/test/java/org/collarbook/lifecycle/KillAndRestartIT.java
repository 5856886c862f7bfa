package org.collarbook.lifecycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged jar in an empty folder: first start, kill -9, restart, a second service on the same folder. */
class KillAndRestartIT {

    private static final String CUSTOMER = """
            {"code":"%s","name":"Larkspur Foods"}""";

    @TempDir
    private Path folder;

    @Test
    void whatWasAcknowledgedIsThereAfterKillMinusNine() throws Exception {
        String key;
        try (var first = RunningJar.start(folder).awaitUp()) {
            key = first.printedKey().orElseThrow();
            for (int i = 0; i < 20; i++) {
                assertThat(first.post("/api/customers", key, CUSTOMER.formatted("C" + i)).statusCode()).isEqualTo(201);
            }
            first.kill();
        }
        assertThat(folder.resolve("data/cluster/postmaster.pid")).as("the database server was left running").exists();

        try (var second = RunningJar.start(folder).awaitUp()) {
            assertThat(second.output()).contains("that a killed service left running");
            assertThat(second.printedKey()).as("no second key on a database that has one").isEmpty();
            var customers = second.get("/api/customers?size=100", key).body();
            for (int i = 0; i < 20; i++) {
                assertThat(customers).contains("\"C" + i + "\"");
            }
        }
    }

    @Test
    void aSecondServiceOnTheSameFolderIsRefusedAndTheFirstGoesOn() throws Exception {
        try (var first = RunningJar.start(folder).awaitUp()) {
            try (var second = RunningJar.start(folder)) {
                assertThat(second.awaitExit()).isNotZero();
                assertThat(second.output()).contains("Another running Collarbook holds the data folder");
            }
            assertThat(first.get("/api/sites", first.printedKey().orElseThrow()).statusCode()).isEqualTo(200);
        }
    }

    @Test
    void aStalePidFileIsClearedAway() throws Exception {
        try (var first = RunningJar.start(folder).awaitUp()) {
            assertThat(first.printedKey()).isPresent();
        }
        // a pid that no process has: beyond the largest that Linux gives out
        Files.writeString(folder.resolve("data/cluster/postmaster.pid"), "99999999\n/nowhere\n");
        try (var second = RunningJar.start(folder).awaitUp()) {
            assertThat(second.output()).contains("the database server it names is gone");
        }
    }

    @Test
    void theDataFolderIsPrivateAndAnotherKeyCanBeIssuedLocally() throws Exception {
        try (var first = RunningJar.start(folder).awaitUp()) {
            assertThat(first.printedKey()).isPresent();
        }
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("data"))))
                .isEqualTo("rwx------");
        assertThat(PosixFilePermissions
                .toString(Files.getPosixFilePermissions(folder.resolve("data/credentials.properties"))))
                .isEqualTo("rw-------");
        try (var second = RunningJar.start(folder, "--collarbook.access.issue-administrator-key=true").awaitUp()) {
            var another = second.printedKey().orElseThrow();
            assertThat(second.get("/api/keys", another).statusCode()).isEqualTo(200);
        }
    }

    /** The solver is native code that the jar has inside, in a jar of its own. */
    @Test
    void aPullPlanIsMadeByTheSolverInTheJar() throws Exception {
        try (var service = RunningJar.start(folder).awaitUp()) {
            var key = service.printedKey().orElseThrow();
            var asked = service.post("/api/pull-plans", key, "{\"shop\":{\"perWeek\":5}}");
            assertThat(asked.statusCode()).isEqualTo(202);
            var location = asked.headers().firstValue("Location").orElseThrow();
            var plan = service.get(location, key).body();
            for (int tries = 0; tries < 1800 && plan.matches(".*\"status\":\"(QUEUED|RUNNING)\".*"); tries++) {
                Thread.sleep(100);
                plan = service.get(location, key).body();
            }
            assertThat(plan).contains("\"status\":\"DONE\"");
        }
    }
}
