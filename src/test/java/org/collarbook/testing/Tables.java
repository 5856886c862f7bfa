package org.collarbook.testing;

import java.util.Map;
import java.util.TreeMap;

import org.springframework.jdbc.core.simple.JdbcClient;

/** What is in the database, to see that a refused request changed nothing. */
public final class Tables {

    private final JdbcClient jdbc;

    Tables(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public long count(String table) {
        return jdbc.sql("select count(*) from " + table).query(Long.class).single();
    }

    /**
     * Rows of every table that the application can read, but for keys, whose use is noted, passes of the clock, the log of
     * what was asked, and the claims of a ledger, which are forgotten a moment after it was told to be in the register.
     */
    public Map<String, Long> counts() {
        var counts = new TreeMap<String, Long>();
        jdbc.sql("""
                select relname from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'
                  and relname not in ('api_key', 'recompute', 'access_log', 'ledger_claim')
                  and has_table_privilege(oid, 'select')""")
                .query(String.class).list()
                .forEach(table -> counts.put(table, count(table)));
        return counts;
    }

    /** What the register's own rows say, whatever their order, and the ends of all chains. */
    public String digest() {
        var digests = new StringBuilder();
        for (var table : new String[]{"container", "customer", "site", "placement", "place_claim", "movement",
                "mark_correction", "extinguisher", "requalifier", "requirement", "journal_head", "route", "route_stop",
                "route_exception", "holiday", "rack", "rack_version"}) {
            digests.append(table).append(' ')
                    .append(jdbc.sql("select coalesce(bit_xor(hashtextextended(row(" + said(table)
                            + ")::text, 0)), 0) from " + table + " t").query(Long.class).single())
                    .append('\n');
        }
        return digests.toString();
    }

    /** When a row was last looked at anew is no part of what it says. */
    private String said(String table) {
        return jdbc.sql("select string_agg('t.' || attname, ', ' order by attnum) from pg_attribute"
                + " where attrelid = cast(? as regclass) and attnum > 0 and not attisdropped"
                + " and attname not in ('changed_by', 'changed_at')").param(table).query(String.class).single();
    }

    /** Runs what is to be refused and fails if it left a trace. */
    public void unchangedBy(Runnable refused) {
        var counts = counts();
        var digest = digest();
        refused.run();
        if (!counts.equals(counts()) || !digest.equals(digest())) {
            throw new AssertionError("rows before " + counts + "\nrows after  " + counts() + "\n" + digest + digest());
        }
    }
}
