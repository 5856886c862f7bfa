package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;

import org.collarbook.compliance.MissingFacts;
import org.collarbook.platform.Ids;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.test.context.TestPropertySource;

/**
 * A page of the schedule is read from where it begins: no table, and no index, is read whole and none is sorted. On a
 * register of its own, for what is noted of a table's size outlasts a transaction that is rolled back.
 */
@RegisterTest
@TestPropertySource(properties = "spring.application.name=collarbook-plans")
class ScheduleByIndexTests {

    private static final String ID = "('00000000-0000-7002-8000-' || lpad(to_hex(%s), 12, '0'))::uuid";

    private final Flyway flyway;

    ScheduleByIndexTests(Flyway flyway) {
        this.flyway = flyway;
    }

    private static void write(JdbcClient jdbc, UUID site, UUID customer) {
        jdbc.sql("insert into container (id, kind, mark_scheme, specification, serial, size, registered_by) select "
                + ID.formatted("n") + ", 'CYLINDER', 'DOT', 'DOT-4BA240', 'INDEX' || n, '20 lb', " + ID.formatted("0")
                + " from generate_series(1, 50000) n").update();
        jdbc.sql("insert into requirement (container_id, requirement, jurisdiction, decisive, standing, due,"
                + " filled_in_time, reasons, site_id, customer_id, rule_book_id, assessed_on) select "
                + ID.formatted("n") + ", 'SHELL', 'US', true, case when n % 50 = 0 then 'UNDETERMINED' else 'DUE' end,"
                + " case when n % 50 <> 0 then date '2020-01-01' + n % 200 * interval '1 month' end, false, '{}',"
                + " case when n % 97 = 0 then ?::uuid else " + ID.formatted("n") + " end,"
                + " case when n % 97 = 0 then ?::uuid else " + ID.formatted("n") + " end, 1, date '2026-11-25'"
                + " from generate_series(1, 50000) n").params(site, customer).update();
        jdbc.sql("analyze container, requirement").update();
    }

    private static ScheduleFilter of(String what, UUID id) {
        return new ScheduleFilter(what.equals("from") ? YearMonth.of(2026, 11) : null, null,
                what.equals("site") ? id : null, what.equals("customer") ? id : null, null,
                what.equals("kind") ? ContainerKind.CYLINDER : null, null, null, null,
                null, null);
    }

    private static String plan(JdbcClient jdbc, String statement, Map<String, Object> filter) {
        var parameters = new HashMap<>(filter);
        parameters.putAll(Map.of("now", OffsetDateTime.parse("2026-11-25T12:00:00Z"), "limit", 101, "after_due",
                LocalDate.of(2026, 12, 1), "after_container", UUID.fromString("00000000-0000-7002-8000-000000000400"),
                "after_requirement", "SHELL", "after_jurisdiction", "US", "missing",
                MissingFacts.codes().toArray(String[]::new)));
        return String.join("\n", jdbc.sql("explain " + statement).params(parameters).query(String.class).list());
    }

    private static void assertReadFromItsPlace(String plan, String index) {
        assertThat(plan).contains(index).doesNotContain("Seq Scan on requirement", "Seq Scan on container");
        // the few codes of one site's routes are sorted, in a plan of their own
        assertThat(plan.split("SubPlan")[0]).doesNotContain("Sort");
    }

    @Test
    void readsNoTableWhole() throws SQLException {
        try (var connection = flyway.getConfiguration().getDataSource().getConnection()) {
            connection.setAutoCommit(false);
            try {
                var jdbc = JdbcClient.create(new SingleConnectionDataSource(connection, true));
                var id = Ids.next();
                write(jdbc, id, id);
                for (var what : new String[]{"nothing", "from", "kind"}) {
                    for (var continued : new boolean[]{false, true}) {
                        var filter = of(what, id);
                        assertReadFromItsPlace(plan(jdbc, ScheduleRows.pageOf(filter, continued), filter.parameters()),
                                "requirement_month");
                    }
                }
                var site = of("site", id);
                assertReadFromItsPlace(plan(jdbc, ScheduleRows.pageOf(site, true), site.parameters()),
                        "requirement_site");
                var customer = of("customer", id);
                assertReadFromItsPlace(plan(jdbc, ScheduleRows.pageOf(customer, true), customer.parameters()),
                        "requirement_customer");
                // so few that the planner may put them in order itself
                assertThat(plan(jdbc, UndeterminedRows.pageOf(ScheduleFilter.EVERYTHING, true), Map.of()))
                        .contains("requirement_undetermined")
                        .doesNotContain("Seq Scan on requirement", "Seq Scan on container");
            } finally {
                connection.rollback();
            }
        }
    }
}
