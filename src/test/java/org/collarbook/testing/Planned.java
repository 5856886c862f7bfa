package org.collarbook.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.regex.Pattern;

import org.flywaydb.core.Flyway;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

/**
 * How the database would answer a statement, whatever other tests left in its tables: of those emptied in the same
 * transaction, which is rolled back, the planner knows nothing and assumes ten pages, so that reading one whole is dear.
 * Only their owner may empty them.
 */
public final class Planned {

    private static final String FORGET = "select pg_clear_attribute_stats(schemaname, tablename, attname, inherited)"
            + " from pg_stats where schemaname = 'public'";

    private final Flyway flyway;

    public Planned(Flyway flyway) {
        this.flyway = flyway;
    }

    /** @param emptied tables; those that refer to them are emptied too */
    public String plan(String emptied, String statement, Object... parameters) throws SQLException {
        try (var owner = flyway.getConfiguration().getDataSource().getConnection()) {
            owner.setAutoCommit(false);
            try {
                var jdbc = JdbcClient.create(new SingleConnectionDataSource(owner, true));
                jdbc.sql("truncate " + emptied + " cascade").update();
                jdbc.sql(FORGET).query((row, n) -> "").list();
                // ten pages are few enough for that all the same
                jdbc.sql("set local enable_seqscan = off").update();
                return String.join("\n",
                        jdbc.sql("explain " + statement).params(parameters).query(String.class).list());
            } finally {
                owner.rollback();
            }
        }
    }

    /** An index may be read whole too: each that is read must be asked for something. */
    public static void assertReachedByIndex(String plan) {
        assertThat(plan).doesNotContain("Seq Scan on", "Disabled: true");
        assertThat(count(plan, "Index (Only )?Scan|Bitmap Index Scan")).as(plan).isPositive()
                .isEqualTo(count(plan, "Index Cond"));
    }

    private static long count(String plan, String what) {
        return Pattern.compile(what).matcher(plan).results().count();
    }
}
