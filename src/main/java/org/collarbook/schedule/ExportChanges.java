package org.collarbook.schedule;

import java.io.IOException;
import java.io.OutputStream;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.Set;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

import org.collarbook.platform.BulkCopyOut;
import org.collarbook.platform.SpreadsheetText;
import org.collarbook.platform.jobs.Claim;
import org.collarbook.schedule.ScheduleExport.Since;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What is new, changed and gone since an earlier export, by the keys and hashes of its rows that were kept. They are kept
 * and not derived by a replay of that moment, since a row also has what is not kept by moment: the routes and the codes
 * of customers, and the word that was derived for that day.
 */
@Component
class ExportChanges {

    private static final Set<String> FREE_TEXT = Set.of("specification", "maker", "serial", "tag", "site", "site_name",
            "customer", "owner", "routes");

    private static final String KEEP = """
            insert into schedule_export_key
                (export_number, attempt, container_id, requirement, jurisdiction, row_hash)
            select e.number, e.attempt, l.container_id, l.requirement, coalesce(l.jurisdiction, ''), md5(l::text)::uuid
            from export_line l, schedule_export e where e.id = ?""";

    /** Of what is gone the row is no more; what the register says of it now is why. */
    private static final String CHANGED = """
            create temporary table export_change on commit drop as
            with earlier as (
              select k.* from schedule_export_key k
              join schedule_export e on e.number = k.export_number and e.attempt = k.attempt where e.id = :since)
            select case when k.container_id is null then 'NEW' else 'CHANGED' end as change, cast(null as text) as why,
              l.* from export_line l
            left join earlier k on k.container_id = l.container_id and k.requirement = l.requirement
              and k.jurisdiction = coalesce(l.jurisdiction, '')
            where k.row_hash is distinct from md5(l::text)::uuid""";
    private static final String GONE = """
            insert into export_change (change, why, requirement, container_id, jurisdiction)
            select 'REMOVED', case
                when exists (select from absorbed a where a.container_id = k.container_id) then 'MERGED'
                when exists (select from requirement d where d.container_id = k.container_id
                  and d.standing = 'CONDEMNED') then 'CONDEMNED'
                when r.due is not null then 'OUT_OF_FILTER'
                when r.standing in ('ON_HOLD', 'REJECTED') then 'UNDETERMINED'
                else coalesce(r.standing, 'NOT_REQUIRED') end,
              k.requirement, k.container_id, nullif(k.jurisdiction, '')
            from schedule_export_key k join schedule_export e on e.number = k.export_number and e.attempt = k.attempt
            left join requirement r on r.container_id = k.container_id and r.requirement = k.requirement
              and r.jurisdiction = k.jurisdiction
            where e.id = :since and not exists (select from export_line l where l.container_id = k.container_id
              and l.requirement = k.requirement and coalesce(l.jurisdiction, '') = k.jurisdiction)""";

    private final JdbcClient jdbc;
    private final BulkCopyOut copyOut;
    private final ScheduleRows rows;

    ExportChanges(JdbcClient jdbc, BulkCopyOut copyOut, ScheduleRows rows) {
        this.jdbc = jdbc;
        this.copyOut = copyOut;
        this.rows = rows;
    }

    /** Keeps which rows this export has, as they are in the plain file. */
    void keep(Claim claim, Source source, ScheduleFilter filter) {
        rows.keep(source, filter, "export_line");
        jdbc.sql(KEEP).param(claim.id()).update();
    }

    Since find(UUID since, Instant snapshotAt) {
        jdbc.sql(CHANGED).param("since", since).update();
        long removed = jdbc.sql(GONE).param("since", since).update();
        return new Since(since, snapshotAt, count("NEW"), count("CHANGED"), removed);
    }

    private long count(String change) {
        return jdbc.sql("select count(*) from export_change where change = ?").param(change).query(Long.class).single();
    }

    long write(boolean plain, OutputStream out) throws IOException {
        UnaryOperator<String> text = column -> !plain && FREE_TEXT.contains(column)
                ? SpreadsheetText.guardedInSql(column) + " as " + column
                : column;
        var columns = Arrays.stream(ScheduleSheets.COLUMNS).map(text).collect(Collectors.joining(", "));
        try {
            return copyOut.write("copy (select change, why, " + columns + " from export_change"
                    + " order by due, container_id, requirement, jurisdiction) to stdout with (format csv, header)",
                    out);
        } catch (SQLException e) {
            throw new IllegalStateException("the changes could not be written to their end", e);
        }
    }
}
