package org.collarbook.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;

import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.simple.JdbcClient;

@RegisterTest
class DatabaseTests {

    private final JdbcClient jdbc;
    private final Flyway flyway;

    DatabaseTests(JdbcClient jdbc, Flyway flyway) {
        this.jdbc = jdbc;
        this.flyway = flyway;
    }

    private String show(String setting) {
        return jdbc.sql("select current_setting(?)").param(setting).query(String.class).single();
    }

    @ParameterizedTest
    @ValueSource(strings = {"fsync", "synchronous_commit", "full_page_writes"})
    void whatIsAcknowledgedIsOnDisk(String setting) {
        assertThat(show(setting)).isEqualTo("on");
    }

    @Test
    void everyMigrationOfTheRepositoryIsApplied() throws Exception {
        try (var files = Files.list(Path.of("db"))) {
            var written = files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(".sql"))
                    .sorted().toList();
            assertThat(flyway.info().applied()).extracting(applied -> applied.getScript())
                    .containsExactlyElementsOf(written);
        }
    }

    @Test
    void theApplicationIsNeitherSuperuserNorOwner() {
        assertThat(jdbc.sql("""
                select rolsuper or rolbypassrls or rolcreaterole or rolcreatedb from pg_roles
                where rolname = current_user""").query(Boolean.class).single()).isFalse();
        assertThat(jdbc.sql("select count(*) from pg_tables where tableowner = current_user").query(Long.class)
                .single()).isZero();
        assertThatThrownBy(() -> jdbc.sql("create table own (id int)").update())
                .rootCause().hasMessageContaining("permission denied");
    }

    @Test
    void theThreeRolesExist() {
        assertThat(jdbc.sql("select rolname from pg_roles where rolname like 'collarbook%' and not rolsuper")
                .query(String.class).list())
                .containsExactlyInAnyOrder("collarbook_owner", "collarbook_app", "collarbook_portal");
    }

    /** Facts are appended; the login that the application has cannot take one back. */
    @ParameterizedTest
    @ValueSource(strings = {"declaration", "mark_correction", "movement", "fill", "requalification", "rule_book",
            "ledger_import_file", "ledger_import_outcome", "ledger_import_problem", "idempotency"})
    void factsCannotBeChangedOrRemoved(String table) {
        for (var change : new String[]{"delete from " + table, "truncate " + table,
                "update " + table + " set " + someColumn(table) + " = " + someColumn(table)}) {
            assertThatThrownBy(() -> jdbc.sql(change).update()).as(change).rootCause()
                    .hasMessageContaining("permission denied");
        }
    }

    private String someColumn(String table) {
        return jdbc.sql("""
                select attname from pg_attribute where attrelid = ?::regclass and attnum > 0
                  and attidentity = '' and not attisdropped
                order by attnum limit 1""").param(table)
                .query(String.class).single();
    }
}
