package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.regex.Pattern;

import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** A container's facts are reached by index, in the table and in what was filed under it; no table is read whole. */
@RegisterTest
class FactsByIndexTests {

    private static final Pattern FILED_WHOLE = Pattern
            .compile("Index (Only )?Scan using \\w+ on refiled[^\\n]*\\n(?! *Index Cond)");

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;

    FactsByIndexTests(JdbcClient jdbc, TransactionTemplate transaction) {
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    private String plan(String statement, String condition, Object parameter) {
        return Objects.requireNonNull(transaction.execute(status -> {
            // small tables are read whole for good reason, unless that is made to look dear
            jdbc.sql("set local enable_seqscan = off").update();
            // so is a small index, for a merge
            jdbc.sql("set local enable_mergejoin = off").update();
            return String.join("\n", jdbc.sql("explain " + statement + condition).param(parameter)
                    .query(String.class).list());
        }));
    }

    /**
     * An index may be read whole too: each that is read must be asked for something. What was filed elsewhere is a handful
     * of rows while tests have merged few records, and then read whole for good reason.
     */
    private static void assertReachedByIndex(String whole) {
        assertThat(whole).doesNotContain("Seq Scan on", "Disabled: true");
        var plan = FILED_WHOLE.matcher(whole).replaceAll("");
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
    void ofOneContainer(String statement) {
        assertReachedByIndex(plan(statement, "where c.id = ? and " + KnownContainers.OPEN, UUID.randomUUID()));
    }

    @ParameterizedTest
    @MethodSource("statements")
    void ofMany(String statement) {
        assertReachedByIndex(plan(statement, "where c.id = any (?) and " + KnownContainers.OPEN + " order by c.id",
                List.of(UUID.randomUUID(), UUID.randomUUID()).toArray(UUID[]::new)));
    }
}
