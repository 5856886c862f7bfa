package org.collarbook.intake;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneId;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;

import org.collarbook.custody.Coordinates;
import org.collarbook.custody.SiteKind;
import org.collarbook.intake.KnownSite.KnownCustomer;
import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Customers and sites by code: those of the register, and in a check those that earlier rows would have opened. These are
 * kept in temporary tables of the check's one transaction.
 */
@Component
class KnownPlaces {

    private static final String SITES = """
            select s.id, s.code, s.name, s.kind, c.id as customer_id, c.code as customer, c.name as customer_name,
                s.latitude, s.longitude, s.zone, s.jurisdiction, s.address
            from site s left join customer c on c.id = s.customer_id where s.code = any (:codes)""";

    private static final String SITES_FORETOLD = """
             union all
            select null, s.code, s.name, s.kind, c.id, s.customer, coalesce(c.name, n.name), s.latitude, s.longitude,
                s.zone, s.jurisdiction, s.address
            from ledger_site s left join customer c on c.code = s.customer
                left join ledger_customer n on n.code = s.customer
            where s.code = any (:codes)""";

    private static final String CUSTOMERS = "select id, code, name from customer where code = any (:codes)";

    private static final String CUSTOMERS_FORETOLD = """
             union all select null, code, name from ledger_customer where code = any (:codes)""";

    private final JdbcClient jdbc;

    KnownPlaces(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    static void openForetold(JdbcClient jdbc) {
        jdbc.sql("create temporary table ledger_customer (code text primary key, name text not null) on commit drop")
                .update();
        jdbc.sql("""
                create temporary table ledger_site (code text primary key, name text not null, kind text not null,
                    customer text, latitude float8, longitude float8, zone text not null, jurisdiction text not null,
                    address text) on commit drop""").update();
    }

    Map<String, KnownSite> sites(Collection<String> codes, boolean foretold) {
        var found = new HashMap<String, KnownSite>();
        if (!codes.isEmpty()) {
            jdbc.sql(foretold ? SITES + SITES_FORETOLD : SITES).param("codes", codes.toArray(String[]::new))
                    .query((row, n) -> site(row)).list()
                    .forEach(site -> found.put(site.code(), site));
        }
        return found;
    }

    Map<String, KnownCustomer> customers(Collection<String> codes, boolean foretold) {
        var found = new HashMap<String, KnownCustomer>();
        if (!codes.isEmpty()) {
            jdbc.sql(foretold ? CUSTOMERS + CUSTOMERS_FORETOLD : CUSTOMERS).param("codes", codes.toArray(String[]::new))
                    .query(KnownCustomer.class).list().forEach(customer -> found.put(customer.code(), customer));
        }
        return found;
    }

    private static KnownSite site(ResultSet row) throws SQLException {
        var latitude = row.getObject("latitude", Double.class);
        var longitude = row.getObject("longitude", Double.class);
        return new KnownSite(row.getObject("id", UUID.class), row.getString("code"), row.getString("name"),
                SiteKind.valueOf(row.getString("kind")), customer(row),
                latitude == null || longitude == null ? null : new Coordinates(latitude, longitude),
                ZoneId.of(row.getString("zone")), new Jurisdiction(row.getString("jurisdiction")),
                row.getString("address"));
    }

    private static @Nullable KnownCustomer customer(ResultSet row) throws SQLException {
        var code = row.getString("customer");
        return code == null
                ? null
                : new KnownCustomer(row.getObject("customer_id", UUID.class), code, row.getString("customer_name"));
    }
}
