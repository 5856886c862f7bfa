package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Around the application: what the database itself lets a portal's login see. */
@RegisterTest
class PortalRoleTests {

    private static final String PASSWORD = UUID.randomUUID().toString();

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;
    private final Flyway flyway;

    PortalRoleTests(Api api, Given given, JdbcClient jdbc, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
        this.flyway = flyway;
    }

    private Connection portal() throws SQLException {
        try (var owner = flyway.getConfiguration().getDataSource().getConnection();
                var statement = owner.createStatement()) {
            statement.execute("alter role collarbook_portal password '" + PASSWORD + "'");
            return DriverManager.getConnection(owner.getMetaData().getURL(), "collarbook_portal", PASSWORD);
        }
    }

    private static List<String> column(Connection connection, String query) throws SQLException {
        try (var statement = connection.createStatement(); var rows = statement.executeQuery(query)) {
            var values = new ArrayList<String>();
            while (rows.next()) {
                values.add(rows.getString(1));
            }
            return values;
        }
    }

    private static void become(Connection connection, UUID customer, String sites) throws SQLException {
        column(connection, "select set_config('collarbook.customer', '" + customer + "', false),"
                + " set_config('collarbook.sites', '" + sites + "', false)");
    }

    private List<String> views() {
        return jdbc.sql("select viewname from pg_views where schemaname = 'portal' order by 1").query(String.class)
                .list();
    }

    private UUID heldCylinderAt(UUID site) {
        var id = given.registered();
        given.moved(id, site, "2026-11-20T09:00:00Z");
        api.as(Role.YARD).post("/api/containers/" + id + "/holds", "{\"reason\":\"DENTED\"}").expect(201);
        return id;
    }

    @Test
    void seesNothingUntilACustomerIsNamed() throws SQLException {
        heldCylinderAt(given.site(given.customer()));
        try (var portal = portal()) {
            assertThat(views()).hasSizeGreaterThan(20);
            for (var view : views()) {
                assertThat(column(portal, "select count(*) from portal." + view)).as(view).containsExactly("0");
            }
            become(portal, UUID.randomUUID(), "");
            for (var view : views()) {
                assertThat(column(portal, "select count(*) from portal." + view)).as(view).containsExactly("0");
            }
        }
    }

    @Test
    void seesItsOwnCustomersRowsAndOfItsSitesWhereThoseAreNamed() throws SQLException {
        var customer = given.customer();
        var site = given.site(customer);
        var here = heldCylinderAt(site);
        var there = heldCylinderAt(given.site(customer));
        var foreign = heldCylinderAt(given.site(given.customer()));
        try (var portal = portal()) {
            become(portal, customer, "");
            assertThat(column(portal, "select id from portal.container")).containsExactlyInAnyOrder(here.toString(),
                    there.toString());
            assertThat(column(portal, "select container_id from portal.hold")).containsExactlyInAnyOrder(
                    here.toString(), there.toString());
            for (var view : views()) {
                assertThat(column(portal, "select x::text from portal." + view + " x")).as(view)
                        .noneMatch(row -> row.contains(foreign.toString()));
            }
            become(portal, customer, "{" + site + "}");
            for (var query : List.of("select id from portal.container", "select container_id from portal.hold",
                    "select distinct container_id from portal.requirement",
                    "select container_id from portal.placement")) {
                assertThat(column(portal, query)).as(query).containsExactly(here.toString());
            }
            assertThat(column(portal, "select id from portal.site")).containsExactly(site.toString());
        }
    }

    /** A function of the reader's own is not shown foreign rows: it would be asked of each before the view's condition. */
    @Test
    void everyViewHasASecurityBarrier() {
        assertThat(jdbc.sql("""
                select relname from pg_class where relnamespace = 'portal'::regnamespace and relkind = 'v'
                  and not coalesce('security_barrier=true' = any (reloptions), false)""").query(String.class).list())
                .isEmpty();
    }

    @Test
    void cannotReadOrWriteAnyTable() throws SQLException {
        try (var portal = portal()) {
            var all = column(portal,
                    "select c.oid::regclass::text from pg_class c where relkind in ('r', 'v', 'm', 'p')"
                            + " and relnamespace = 'public'::regnamespace");
            assertThat(all).hasSizeGreaterThan(60);
            for (var table : all) {
                assertThatThrownBy(() -> column(portal, "select * from " + table + " limit 1")).as(table)
                        .hasMessageContaining("permission denied");
            }
            for (var write : List.of("delete from portal.container", "update portal.site set name = 'x'",
                    "insert into portal.customer values (gen_random_uuid(), 'x', 'x')", "create table mine (id int)",
                    "create temporary table mine (id int)", "set role collarbook_app", "set role collarbook_owner")) {
                assertThatThrownBy(() -> column(portal, write)).as(write).hasMessageContaining("permission denied");
            }
        }
    }

    @Test
    void theApplicationActsAsThePortalOnlyWhereItSaysSo() {
        assertThat(jdbc.sql("select pg_has_role('collarbook_app', 'collarbook_portal', 'SET')"
                + " and not pg_has_role('collarbook_app', 'collarbook_portal', 'USAGE')").query(Boolean.class).single())
                .isTrue();
        api.as(Role.CLERK).get("/api/customers/" + given.customer() + "/containers").expect(200);
        assertThat(jdbc.sql("select current_user || ' ' || current_setting('search_path')").query(String.class)
                .single()).startsWith("collarbook_app").doesNotContain("portal");
    }
}
