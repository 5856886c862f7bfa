package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;

import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

/** A container's facts are reached by index, in the table and in what was filed under it; no table is read whole. */
@RegisterTest
class FactsByIndexTests {

    private final Flyway flyway;

    FactsByIndexTests(Flyway flyway) {
        this.flyway = flyway;
    }

    /**
     * What other tests left decides nothing: of tables emptied in the same transaction, which is rolled back, the planner
     * knows nothing and assumes ten pages, so that reading one whole is dear. Only their owner may empty them.
     */
    private String plan(String statement, String condition, Object parameter) throws SQLException {
        try (var owner = flyway.getConfiguration().getDataSource().getConnection()) {
            owner.setAutoCommit(false);
            try {
                var jdbc = JdbcClient.create(new SingleConnectionDataSource(owner, true));
                jdbc.sql("truncate container, site, declaration cascade").update();
                // ten pages are few enough for that all the same
                jdbc.sql("set local enable_seqscan = off").update();
                return String.join("\n", jdbc.sql("explain " + statement + condition).param(parameter)
                        .query(String.class).list());
            } finally {
                owner.rollback();
            }
        }
    }

    /** An index may be read whole too: each that is read must be asked for something. */
    private static void assertReachedByIndex(String plan) {
        assertThat(plan).doesNotContain("Seq Scan on", "Disabled: true");
        assertThat(count(plan, "Index (Only )?Scan|Bitmap Index Scan")).as(plan).isPositive()
                .isEqualTo(count(plan, "Index Cond"));
    }

    private static long count(String plan, String what) {
        return Pattern.compile(what).matcher(plan).results().count();
    }

    static List<String> statements() {
        return List.of(KnownContainers.SELECT, KnownContainers.PLAIN);
    }

    @ParameterizedTest
    @MethodSource("statements")
    void ofOneContainer(String statement) throws SQLException {
        assertReachedByIndex(plan(statement, "where c.id = ? and " + KnownContainers.OPEN, UUID.randomUUID()));
    }

    @ParameterizedTest
    @MethodSource("statements")
    void ofMany(String statement) throws SQLException {
        assertReachedByIndex(plan(statement, "where c.id = any (?) and " + KnownContainers.OPEN + " order by c.id",
                List.of(UUID.randomUUID(), UUID.randomUUID()).toArray(UUID[]::new)));
    }
}
