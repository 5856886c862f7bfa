package org.collarbook.dispatch.lists;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

import org.collarbook.access.Role;
import org.collarbook.platform.Ids;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.SentStatements;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.test.context.TestPropertySource;

/**
 * One statement reads a list, whatever the number of its stops, and it reads no table whole. On a register of its own, for
 * what is noted of a table's size outlasts a transaction that is rolled back.
 */
@RegisterTest
@TestPropertySource(properties = "spring.application.name=collarbook-plans")
class ListsByIndexTests {

    /** Written by the database: {@code %s} is a number, and the id carries it. */
    private static final String ID = "('00000000-0000-7001-8000-' || lpad(to_hex(%s), 12, '0'))::uuid";

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private final Api api;
    private final Given given;
    private final GivenRoutes routes;
    private final Flyway flyway;

    ListsByIndexTests(Api api, Given given, JdbcClient jdbc, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.routes = new GivenRoutes(api, given, jdbc);
        this.flyway = flyway;
    }

    /** Of whoever owns the tables, since only they may analyse them and delete what was written. */
    private Connection owner() throws SQLException {
        return flyway.getConfiguration().getDataSource().getConnection();
    }

    /** So many overdue cylinders, a hundred at each of the sites in turn. */
    private static void write(JdbcClient jdbc, int containers, UUID... sites) {
        var number = ID.formatted("n");
        jdbc.sql("insert into container (id, kind, mark_scheme, specification, serial, size, registered_by) select "
                + number + ", 'CYLINDER', 'DOT', 'DOT-4BA240', 'LONG' || n, '20 lb', " + ID.formatted("0")
                + " from generate_series(1, ?) n").param(containers).update();
        jdbc.sql("insert into requirement (container_id, requirement, jurisdiction, decisive, standing, due,"
                + " filled_in_time, reasons, site_id, rule_book_id, assessed_on) select " + number
                + ", 'SHELL', 'US', true, 'DUE', date '2020-01-01' + n % 200 * interval '1 month', false, '{}',"
                + " (cast(? as uuid[]))[n / 100 % ? + 1], 1, date '2026-11-25' from generate_series(1, ?) n")
                .params(sites, sites.length, containers).update();
    }

    private static final Pattern ACCEPTANCES = Pattern
            .compile("[^\\n]*pull_plan_acceptance[^\\n]*\\n( *Index Cond[^\\n]*\\n)?");

    private static String plan(JdbcClient jdbc, String statement, LocalDate until, List<UUID> sites) {
        var month = until.withDayOfMonth(1).minusMonths(1);
        return String.join("\n", jdbc.sql("explain " + statement)
                .param("sites", sites.toArray(UUID[]::new)).param("routes", new UUID[sites.size()])
                .param("visits", days(TODAY, sites)).param("days", days(TODAY, sites))
                .param("last_due", days(month, sites)).param("until", days(until, sites)).param("most", 10_001)
                .query(String.class).list());
    }

    private static String[] days(LocalDate day, List<UUID> sites) {
        return sites.stream().map(site -> day.toString()).toArray(String[]::new);
    }

    /** An index may be read whole too: each that is read must be asked for something, but for the few acceptances. */
    private static void assertNoTableIsReadWhole(String whole) {
        var plan = ACCEPTANCES.matcher(whole).replaceAll("");
        assertThat(plan).doesNotContain("Seq Scan on requirement", "Seq Scan on container", "Seq Scan on placement");
        assertThat(count(plan, "Index (Only )?Scan|Bitmap Index Scan")).as(plan).isPositive()
                .isEqualTo(count(plan, "Index Cond"));
    }

    private static long count(String plan, String what) {
        return Pattern.compile(what).matcher(plan).results().count();
    }

    @Test
    void readsNoTableWhole() throws SQLException {
        try (var connection = owner()) {
            connection.setAutoCommit(false);
            try {
                var jdbc = JdbcClient.create(new SingleConnectionDataSource(connection, true));
                var sites = IntStream.range(0, 500).mapToObj(i -> Ids.next()).toArray(UUID[]::new);
                write(jdbc, 50_000, sites);
                jdbc.sql("analyze container, requirement").update();
                assertNoTableIsReadWhole(plan(jdbc, PullRows.SELECT, LocalDate.of(2026, 12, 17), List.of(sites[0])));
                assertNoTableIsReadWhole(plan(jdbc, PullRows.SELECT, LocalDate.of(2026, 12, 17),
                        List.of(sites).subList(0, 20)));
                // every second row of each of 20 sites, as where no later visit is known
                assertNoTableIsReadWhole(plan(jdbc, PullRows.SELECT, LocalDate.of(2199, 12, 31),
                        List.of(sites).subList(0, 20)));
                jdbc.sql("update requirement set site_id = null where site_id = any (?)")
                        .param(List.of(sites).subList(0, 100).toArray(UUID[]::new)).update();
                jdbc.sql("analyze requirement").update();
                assertNoTableIsReadWhole(String.join("\n", jdbc.sql("explain " + PlaceUnknownRows.SELECT)
                        .param("before", LocalDate.of(2026, 12, 17)).param("today", TODAY)
                        .param("after", "-infinity").param("id", new UUID(0, 0)).param("limit", 101)
                        .query(String.class).list()));
            } finally {
                connection.rollback();
            }
        }
    }

    @Test
    void aListThatIsTooLongIsRefused() throws SQLException {
        var site = given.site(given.customer());
        try (var connection = owner()) {
            var jdbc = JdbcClient.create(new SingleConnectionDataSource(connection, true));
            try {
                write(jdbc, PullRows.MOST + 1, site);
                var dispatcher = api.as(Role.DISPATCHER);
                dispatcher.get("/api/pull-list?site=" + site).expectProblem(422, "LIST_TOO_LONG");
                dispatcher.get("/api/pull-list?before=2026-12-01&site=" + site).expect(200);
            } finally {
                jdbc.sql("delete from requirement where site_id = ?").param(site).update();
                jdbc.sql("delete from container where serial like 'LONG%'").update();
            }
        }
    }

    private String routeOf(int stops) {
        var sites = IntStream.range(0, stops).mapToObj(i -> given.site(given.customer())).toArray(UUID[]::new);
        for (var site : List.of(sites[0], sites[stops - 1])) {
            var body = Given.cylinder();
            body.put("manufactured", "2010-05");
            given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        }
        return routes.route(given.site(null), "FREQ=WEEKLY;BYDAY=TH", sites);
    }

    private long statements(String path) {
        var dispatcher = api.as(Role.DISPATCHER);
        dispatcher.get(path).expect(200);
        try (var sent = SentStatements.byTheRequest()) {
            assertThat(dispatcher.get(path).expect(200).at("/count").asInt()).isEqualTo(2);
            return sent.count();
        }
    }

    /** The key, the calendars, the sites, the containers, the totals, the disputes, the plan in force. */
    @Test
    void aLongRouteTakesAsManyStatementsAsAShortOne() {
        var few = statements("/api/routes/" + routeOf(3) + "/pull-list?visit=2026-12-03");
        var many = statements("/api/routes/" + routeOf(60) + "/pull-list?visit=2026-12-03");
        assertThat(many).isEqualTo(few).isEqualTo(7);
    }
}
