package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;

import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** No facts of a container stay behind when its record is merged or split. */
@RegisterTest
class FactTablesTests {

    private final List<FactTable> tables;
    private final JdbcClient jdbc;

    FactTablesTests(List<FactTable> tables, JdbcClient jdbc) {
        this.tables = tables;
        this.jdbc = jdbc;
    }

    /** What was corrected or declared of a record, and its chain, are of the record; a flag goes with its fill; a plan is no fact, nor what the database notes. */
    @Test
    void everyTableOfFactsAboutAContainerIsNamed() {
        assertThat(jdbc.sql("""
                select c.relname from pg_class c join pg_attribute a on a.attrelid = c.oid
                where c.relkind = 'r' and c.relnamespace = 'public'::regnamespace and a.attname = 'container_id'
                  and has_table_privilege(c.oid, 'insert') and not has_table_privilege(c.oid, 'update')
                  and not has_table_privilege(c.oid, 'delete')
                  and c.relname not in ('mark_correction', 'journal', 'fill_flag', 'declaration_member',
                    'declaration_outcome', 'pull_plan_line', 'more_recorded',
                    'pull_plan_remainder')""").query(String.class).list())
                .containsExactlyInAnyOrderElementsOf(tables.stream().map(FactTable::name).toList());
    }

    @Test
    void theViewOfEachHasAllItsColumns() {
        for (var table : tables) {
            assertThat(columns("filed_" + table.name())).as(table.name()).isNotEmpty()
                    .containsExactlyInAnyOrderElementsOf(columns(table.name()));
        }
    }

    private List<String> columns(String relation) {
        return jdbc.sql("select attname from pg_attribute where attrelid = cast(? as regclass) and attnum > 0"
                + " and not attisdropped").param(relation).query(String.class).list();
    }
}
