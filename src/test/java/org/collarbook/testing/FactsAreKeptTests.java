package org.collarbook.testing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The login that the application uses cannot change or remove what happened. */
@RegisterTest
class FactsAreKeptTests {

    private final JdbcClient jdbc;

    FactsAreKeptTests(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @ParameterizedTest
    @ValueSource(strings = {"mark_correction", "movement", "sighting", "reading", "swap", "fill", "requalification",
            "declaration",
            "idempotency",
            "extinguisher", "extinguisher_record", "hold", "hold_lift", "recall", "recall_end", "test_record",
            "requalification_correction", "repair", "repair_correction", "emptying", "journal", "site_version",
            "fill_flag", "scan_batch", "scan_line", "part", "part_removal", "out_of_service", "return_to_service",
            "transport_record", "training", "identity_act", "identity_act_fact", "identity_act_undo",
            "group_declaration", "declaration_member",
            "declaration_outcome", "declaration_withdrawal", "pull_plan_acceptance", "pull_plan_line",
            "pull_plan_remainder", "access_log", "token_caller"})
    void theDatabaseRefusesToChangeOrRemoveFacts(String table) {
        assertThat(jdbc.sql("select current_user").query(String.class).single()).isEqualTo("collarbook_app");
        var column = jdbc.sql("select attname from pg_attribute where attrelid = cast(? as regclass) and attnum = 1")
                .param(table).query(String.class).single();
        for (var statement : List.of("update " + table + " set " + column + " = " + column, "delete from " + table,
                "truncate " + table, "drop table " + table, "alter table " + table + " disable trigger all")) {
            assertThatThrownBy(() -> jdbc.sql(statement).update()).as(statement).rootCause()
                    .hasMessageMatching("ERROR: (permission denied for|must be owner of) table " + table + "(?s).*");
        }
        for (var privilege : List.of("update", "delete", "truncate")) {
            assertThat(jdbc.sql("select has_table_privilege(?, ?)").params(table, privilege).query(Boolean.class)
                    .single()).as(privilege).isFalse();
        }
    }
}
