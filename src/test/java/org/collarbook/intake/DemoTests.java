package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;

/** The demo on a register of its own. */
@RegisterTest
@TestPropertySource(properties = "collarbook.demo=true")
class DemoTests {

    private final Api api;
    private final Tables tables;
    private final JdbcClient jdbc;

    DemoTests(Api api, Tables tables, JdbcClient jdbc) {
        this.api = api;
        this.tables = tables;
        this.jdbc = jdbc;
    }

    @Test
    void fillsAnEmptyRegisterAtStartWithAFleetThatShowsEveryStatus() {
        assertEquals(1, tables.count("ledger_pass where purpose = 'COMMIT' and status = 'DONE'"
                + " and rows_read = 5000 and rows_refused > 50 and rows_ambiguous > 5"
                + " and rows_new + rows_refused + rows_ambiguous = rows_read"));
        assertEquals(60, tables.count("site"));
        assertEquals(2, tables.count("container where specification = 'MC-331'"));
        assertEquals("100 gal, 1150 gal, 288 gal, 499 gal", jdbc.sql("""
                select distinct size from container where kind = 'STATIONARY_TANK' and size <> 'unknown size'
                order by size""").query(String.class).list().stream().collect(Collectors.joining(", ")));
        // common practice, no source: what a forklift cylinder of 33.5 lb holds
        assertTrue(tables.count("container where size = '33.5 lb' and use = 'INDUSTRIAL_TRUCK'") > 2500);
        var statuses = jdbc.sql("""
                select distinct container_status(standing, due, filled_in_time, changes_on, changes_to,
                    '2026-11-25') from requirement
                where decisive order by 1""").query(String.class).list();
        assertTrue(statuses.containsAll(List.of("DUE_THIS_MONTH", "IN_DATE", "NOT_REQUIRED",
                "OTHER_AUTHORITY", "OVERDUE", "UNDETERMINED", "USE_UP")), statuses.toString());
    }

    /** Today is 2026-11-25, the day before the fourth Thursday of November. */
    @Test
    void itsTrucksAreDrivenToAllSitesButTwo() {
        var routes = api.as(Role.DISPATCHER).get("/api/routes").expect(200);
        assertEquals(5, routes.at("/items").size());
        routes.at("/items").forEach(route -> assertEquals(2, route.at("/nextVisits").size(), route.toString()));
        assertEquals(2, tables.count("""
                site where kind = 'CUSTOMER' and id not in (select site_id from route_stop)"""));
        assertEquals(2, tables.count("rack_version"));
        assertEquals(0, tables.count("""
                rack where size not in (select size from container) and places > 0"""));
        assertEquals(1, tables.count("route_exception where day > '2026-11-25'"));
        var thursdays = jdbc.sql("select id from route where code = 'W-THU'").query(String.class).single();
        assertEquals("Thanksgiving Day", api.as(Role.DISPATCHER).get("/api/routes/" + thursdays + "/visits")
                .text("/notDriven/0/reason"));
    }

    @Test
    void isRefusedWhereAnythingIsRegistered() {
        tables.unchangedBy(() -> api.as(Role.ADMINISTRATOR).post("/api/demo", "").expectProblem(409,
                "REGISTER_NOT_EMPTY"));
        api.as(Role.CLERK).post("/api/demo", "").expectProblem(403, "FORBIDDEN");
    }
}
