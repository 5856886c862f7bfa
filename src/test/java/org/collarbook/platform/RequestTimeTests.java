package org.collarbook.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.Map;

import javax.sql.DataSource;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;
import org.springframework.transaction.support.TransactionTemplate;

/** A request that waits too long is ended by the database and stores nothing; what runs in the background is not. */
@RegisterTest
@TestPropertySource(properties = "collarbook.requests.time=4s")
class RequestTimeTests {

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final DataSource database;
    private final JdbcClient jdbc;
    private final BulkCopyOut copyOut;
    private final TransactionTemplate transaction;

    RequestTimeTests(Api api, Given given, Tables tables, DataSource database, JdbcClient jdbc, BulkCopyOut copyOut,
            TransactionTemplate transaction) {
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.database = database;
        this.jdbc = jdbc;
        this.copyOut = copyOut;
        this.transaction = transaction;
    }

    @Test
    void oneThatWaitsForAnotherComesAgain() throws Exception {
        var id = given.registered();
        var path = "/api/containers/" + id;
        var clerk = api.as(Role.CLERK);
        var change = Given.cylinder();
        change.put("reason", "read anew");
        var read = clerk.get(path);
        try (var elsewhere = database.getConnection(); var lock = elsewhere.createStatement()) {
            elsewhere.setAutoCommit(false);
            lock.execute("select from container where id = '" + id + "' for update");
            tables.unchangedBy(() -> {
                var answer = clerk.ifMatch(read).put(path, change).expectProblem(503, "TOO_LONG");
                assertThat(answer.header("Retry-After")).isEqualTo("1");
            });
            elsewhere.rollback();
        }
        clerk.ifMatch(read).put(path, change).expect(200);
        api.as(Role.FILLER).post("/api/containers/" + id + "/holds", Map.of("reason", "DENTED")).expect(201);
    }

    @Test
    void workInTheBackgroundTakesWhatItTakes() {
        transaction.executeWithoutResult(status -> {
            Unhurried.go(jdbc);
            jdbc.sql("select pg_sleep(5)").query(String.class).optional();
        });
        assertThat(limit()).as("of the transaction alone").isEqualTo("4s");
    }

    @Test
    void aFileIsSentAsLongAsSomebodyReads() throws Exception {
        for (int i = 0; i < 2; i++) {
            var out = new ByteArrayOutputStream();
            copyOut.write("copy (select pg_sleep(0.03) from generate_series(1, 170)) to stdout", out);
            assertThat(out.size()).isEqualTo(170);
        }
        assertThat(limit()).isEqualTo("4s");
    }

    private String limit() {
        return jdbc.sql("show statement_timeout").query(String.class).single();
    }
}
