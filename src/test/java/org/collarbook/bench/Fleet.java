package org.collarbook.bench;

import java.util.UUID;

import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * A made-up fleet of any size, written by the database itself: a hundred containers a site, five sites a customer,
 * two thirds tested once, half filled lately.
 */
final class Fleet {

    private final JdbcClient jdbc;
    private final int size;

    Fleet(JdbcClient jdbc, int size) {
        this.jdbc = jdbc;
        this.size = size;
    }

    /** Ids that carry their number, so that a benchmark can name any row. */
    static String idOf(String table, String number) {
        return "(lpad(to_hex(" + table.hashCode() + "), 8, '0') || '-0000-7000-8000-' || lpad(to_hex((" + number
                + ")::bigint), 12, '0'))::uuid";
    }

    static UUID id(String table, long number) {
        return UUID.fromString("%08x-0000-7000-8000-%012x".formatted(table.hashCode(), number));
    }

    void write() {
        int sites = Math.max(1, size / 100);
        int customers = Math.max(1, size / 500);
        jdbc.sql("insert into customer (id, code, name) select " + idOf("customer", "n")
                + ", 'BC' || n, 'Customer ' || n"
                + " from generate_series(0, ?) n").param(customers - 1).update();
        jdbc.sql("insert into site (id, code, name, kind, customer_id, zone, jurisdiction) select " + idOf("site", "n")
                + ", 'BS' || n, 'Site ' || n, 'CUSTOMER', " + idOf("customer", "n / 5 % " + customers)
                + ", 'America/Chicago', 'US' from generate_series(0, ?) n").param(sites - 1).update();
        jdbc.sql("insert into container (id, kind, mark_scheme, specification, maker, serial, manufactured,"
                + " water_capacity, water_capacity_lb, tare_lb, size, marks_legible, coated, lading, exclusive,"
                + " corrosion_free, owned, collar_read, tag, registered_by) select " + idOf("container", "n")
                + ", 'CYLINDER', 'DOT', (array['DOT-4BA240', 'DOT-4BW240', 'DOT-4E240'])[n % 3 + 1], 'QX', 'B' || n,"
                + " date '1996-01-01' + (n::bigint * 7919 % 360) * interval '1 month', '79.8 lb', 79.8, 34, '33.5 lb', true,"
                + " true, 'LPG', true, true, true, true, 'BT' || n, " + idOf("key", "0")
                + " from generate_series(0, ?) n").param(size - 1).update();
        jdbc.sql("insert into movement (id, container_id, to_site_id, occurred_at, recorded_by) select "
                + idOf("movement", "n") + ", " + idOf("container", "n") + ", " + idOf("site", "n / 100 % " + sites)
                + ", now() - interval '400 days', " + idOf("key", "0") + " from generate_series(0, ?) n")
                .param(size - 1).update();
        jdbc.sql(
                "insert into placement (container_id, site_id, movement_id, since) select container_id, to_site_id, id,"
                        + " occurred_at from movement")
                .update();
        jdbc.sql("insert into requalification (id, container_id, month, method, rin, recorded_by) select "
                + idOf("requalification", "n") + ", " + idOf("container", "n")
                + ", date '2014-01-01' + (n::bigint * 104729 % 140) * interval '1 month', (array['VOLUMETRIC_EXPANSION',"
                + " 'PROOF_PRESSURE', 'EXTERNAL_VISUAL'])[n % 3 + 1], 'A123', " + idOf("key", "0")
                + " from generate_series(0, ?) n where n % 3 > 0"
                + " and date '2014-01-01' + (n::bigint * 104729 % 140) * interval '1 month'"
                + "  >= date '1996-01-01' + (n::bigint * 7919 % 360) * interval '1 month'").param(size - 1).update();
        jdbc.sql("insert into fill (id, container_id, filled_on, recorded_by) select " + idOf("fill", "n") + ", "
                + idOf("container", "n") + ", date '2026-11-01' - (n % 300)::int, " + idOf("key", "0")
                + " from generate_series(0, ?) n where n % 2 = 0").param(size - 1).update();
        judgedLongAgo();
    }

    /** By rules that are none of the service's, so that the first recompute is one of all. */
    private void judgedLongAgo() {
        jdbc.sql("insert into journal_head (container_id, seq, hash) select id, 0, decode(repeat('00', 32), 'hex')"
                + " from container where serial like 'B%' on conflict do nothing").update();
        jdbc.sql("insert into requirement (container_id, requirement, jurisdiction, decisive, standing, filled_in_time,"
                + " reasons, rule_book_id, assessed_on) select id, 'SHELL', 'US', true, 'UNDETERMINED', false, '{}', 0,"
                + " date '2020-01-01' from container where serial like 'B%' on conflict do nothing").update();
    }

    /** The last twenty sites stand for one depot; of the others, twenty each are a route that is driven on Thursdays. */
    int routes() {
        int routes = Math.max(1, size / 2000 - 1);
        jdbc.sql("insert into site (id, code, name, kind, zone, jurisdiction) values (" + idOf("depot", "0")
                + ", 'BD', 'Depot', 'DEPOT', 'America/Chicago', 'US')").update();
        for (var table : new String[]{"requirement", "placement"}) {
            jdbc.sql("update " + table + " set site_id = " + idOf("depot", "0") + " where site_id in (select "
                    + idOf("site", "n") + " from generate_series(?, ?) n)").params(routes * 20, routes * 20 + 19)
                    .update();
        }
        jdbc.sql("insert into route (id, code, name, depot_id, rule, first_day, on_holidays) select "
                + idOf("route", "n") + ", 'BR' || n, 'Loop ' || n, " + idOf("depot", "0")
                + ", 'FREQ=WEEKLY;BYDAY=TH', date '2026-01-01', true from generate_series(0, ?) n").param(routes - 1)
                .update();
        jdbc.sql("insert into route_stop select " + idOf("route", "n / 20") + ", n % 20 + 1, " + idOf("site", "n")
                + " from generate_series(0, ?) n").param(routes * 20 - 1).update();
        return routes;
    }
}
