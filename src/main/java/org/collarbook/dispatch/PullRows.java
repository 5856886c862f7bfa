package org.collarbook.dispatch;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads what must come back from a set of sites: one index range by due month, one by standing, and one of what will be
 * out of service by the date though its month is later, such as at the end of a service life.
 */
@Component
class PullRows {

    /** A list longer than this is no list to work from. */
    static final int MOST = 10_000;

    private static final String SELECT = """
            with pulled as (
                select * from requirement
                where decisive and site_id = any(:sites) and standing = 'DUE' and due <= :last_due
                union all
                -- where one authority's answer is not known, what another's says is overdue is overdue all the same
                select * from (
                    select distinct on (container_id) * from requirement one
                    where not decisive and site_id = any(:sites) and standing = 'DUE' and due <= :last_due
                      and exists (select from requirement worst where worst.container_id = one.container_id
                        and worst.decisive and worst.standing in ('UNDETERMINED', 'OTHER_AUTHORITY'))
                    order by container_id, due, requirement, jurisdiction) beside
                union all
                select * from requirement
                where decisive and site_id = any(:sites) and standing in ('CONDEMNED', 'REJECTED', 'ON_HOLD')
                union all
                select * from requirement
                where decisive and site_id = any(:sites) and changes_on <= :before
                  and changes_to in ('CONDEMNED', 'REJECTED', 'ON_HOLD', 'OVERDUE')
                  and standing not in ('CONDEMNED', 'REJECTED', 'ON_HOLD')
                  and not (standing = 'DUE' and due <= :last_due))
            select c.id, c.kind, c.specification, c.maker, c.serial, c.size, c.tag,
                   w.status, r.requirement, nullif(r.jurisdiction, '') as jurisdiction, r.due,
                   case when w.leaves then r.changes_on end as leaves_on,
                   case when w.leaves then r.changes_to end as leaves_as, r.rule,
                   s.id as site_id, s.code as site_code, s.name as site_name, s.address
            from pulled r join container c on c.id = r.container_id join site s on s.id = r.site_id
            cross join lateral (select
                container_status(r.standing, r.due, r.filled_in_time, r.changes_on, r.changes_to,
                    (:now at time zone s.zone)::date) as status,
                r.changes_on <= :before
                    and r.changes_to in ('CONDEMNED', 'REJECTED', 'ON_HOLD', 'OVERDUE') as leaves) w
            where s.kind <> 'REQUALIFIER'
              and (w.leaves or w.status not in ('UNDETERMINED', 'OTHER_AUTHORITY', 'NOT_REQUIRED'))
            order by s.name, s.id, r.due nulls first, c.id
            limit :most""";

    private final JdbcClient jdbc;
    private final Clock clock;

    PullRows(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    List<PullRow> before(LocalDate before, List<UUID> sites) {
        return jdbc.sql(SELECT).param("sites", sites.toArray(UUID[]::new)).param("before", before)
                .param("last_due", lastDueBefore(before)).param("now", now()).param("most", MOST + 1)
                .query(PullRow.class).list();
    }

    private OffsetDateTime now() {
        return OffsetDateTime.now(clock.withZone(ZoneOffset.UTC));
    }

    /** The last due month whose last day lies before the date: the month before the date's own, whatever its day. */
    static LocalDate lastDueBefore(LocalDate before) {
        return before.withDayOfMonth(1).minusMonths(1);
    }

    /** Containers at these sites whose due month cannot be told: not on the list, and not fine either. */
    long undetermined(List<UUID> sites) {
        return jdbc.sql("""
                select count(*) from (
                    select site_id, standing, changes_on, changes_to from requirement
                    where decisive and site_id = any(:sites) and standing = 'UNDETERMINED'
                    union all
                    select site_id, standing, changes_on, changes_to from requirement
                    where decisive and site_id = any(:sites) and standing <> 'UNDETERMINED'
                      and changes_on <= (:now at time zone 'UTC')::date + 1 and changes_to = 'UNDETERMINED') r
                join site s on s.id = r.site_id
                where case when (:now at time zone s.zone)::date >= r.changes_on then r.changes_to else r.standing end
                    = 'UNDETERMINED'""")
                .param("sites", sites.toArray(UUID[]::new)).param("now", now()).query(Long.class).single();
    }
}
