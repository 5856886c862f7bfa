package org.collarbook.schedule;

/**
 * Where the statements of the schedule read from: what is stored, or what was replayed into tables of this transaction
 * that stand for those of the same names. The word of a replayed clock is known, so it is the one that it turned into.
 */
enum Source {
    STORED(""),
    REPLAYED("""
            with requirement as (
              select container_id, requirement, jurisdiction, standing, due, false as filled_in_time,
                date '-infinity' as changes_on, status as changes_to, rule, reasons, site_id, customer_id
              from pg_temp.replayed_clock),
            container as (select * from pg_temp.replayed_container),
            site as (select * from pg_temp.replayed_site)
            """);

    private final String with;

    Source(String with) {
        this.with = with;
    }

    String read(String select) {
        return with + select;
    }
}
