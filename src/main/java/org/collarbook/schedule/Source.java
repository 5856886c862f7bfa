package org.collarbook.schedule;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/**
 * Where the statements of the schedule read from, and the moment whose date at each site is today: what is stored, or
 * what was replayed into tables of this transaction, which then stand for those of the same names. The word of a replayed
 * clock is known, so it is the one that the clock has turned into.
 */
record Source(String with, OffsetDateTime now) {

    private static final String REPLAYED = """
            with requirement as (
              select container_id, requirement, jurisdiction, standing, due, false as filled_in_time,
                date '-infinity' as changes_on, status as changes_to, rule, reasons, site_id, customer_id
              from pg_temp.replayed_clock),
            container as (select * from pg_temp.replayed_container),
            site as (select * from pg_temp.replayed_site)
            """;

    static Source stored(Instant now) {
        return new Source("", now.atOffset(ZoneOffset.UTC));
    }

    static Source replayed(Instant now) {
        return new Source(REPLAYED, now.atOffset(ZoneOffset.UTC));
    }

    String read(String select) {
        return with + select;
    }
}
