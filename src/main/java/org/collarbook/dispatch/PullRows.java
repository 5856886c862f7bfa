package org.collarbook.dispatch;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads what must come back from a set of sites: one index range by due month, one by standing. */
@Component
class PullRows {

    /** A list longer than this is no list to work from. */
    static final int MOST = 10_000;

    private static final String SELECT = """
            with pulled as (
                select * from requirement
                where decisive and site_id = any(:sites) and standing = 'DUE' and due <= :last_due
                union all
                select * from requirement
                where decisive and site_id = any(:sites) and standing in ('CONDEMNED', 'REJECTED', 'ON_HOLD'))
            select c.id, c.kind, c.specification, c.maker, c.serial, c.size, c.tag,
                   container_status(r.standing, r.due, r.filled_in_time, (:now at time zone s.zone)::date) as status,
                   r.requirement, r.due, r.rule, s.id as site_id, s.code as site_code, s.name as site_name, s.address
            from pulled r join container c on c.id = r.container_id join site s on s.id = r.site_id
            where s.kind <> 'REQUALIFIER'
            order by s.name, s.id, r.due nulls first, c.id
            limit :most""";

    private final JdbcClient jdbc;
    private final Clock clock;

    PullRows(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    List<PullRow> before(LocalDate before, List<UUID> sites) {
        return jdbc.sql(SELECT).param("sites", sites.toArray(UUID[]::new)).param("last_due", lastDueBefore(before))
                .param("now", OffsetDateTime.now(clock.withZone(ZoneOffset.UTC))).param("most", MOST + 1)
                .query(PullRow.class).list();
    }

    /** The last due month whose last day lies before the date: the month before the date's own, whatever its day. */
    static LocalDate lastDueBefore(LocalDate before) {
        return before.withDayOfMonth(1).minusMonths(1);
    }

    /** Containers at these sites whose due month cannot be told: not on the list, and not fine either. */
    long undetermined(List<UUID> sites) {
        return jdbc.sql("""
                select count(*) from requirement
                where decisive and standing = 'UNDETERMINED' and site_id = any(?)""")
                .param(sites.toArray(UUID[]::new)).query(Long.class).single();
    }
}
