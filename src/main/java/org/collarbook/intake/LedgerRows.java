package org.collarbook.intake;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;

import org.collarbook.registry.ContainerRows;
import org.collarbook.platform.SpreadsheetText;
import org.collarbook.platform.Unhurried;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

import tools.jackson.databind.json.JsonMapper;

/**
 * Writes the register as a ledger, row by row from a cursor of one transaction: one snapshot, some hundred rows in
 * memory. The server's COPY cannot do it, since each stamp is read once more before it is written.
 */
@Component
class LedgerRows {

    private static final int FETCHED = 500;
    private static final int BUFFER = 1 << 16;

    /** Facts as each counts. A place that others claim under another jurisdiction is not told. */
    private static final String SELECT = "select " + ContainerRows.COLUMNS + """
            , s.code as site_code, s.name as site_name, s.kind as site_kind, s.zone, s.jurisdiction, s.address,
              s.latitude, s.longitude, u.code as customer_code, u.name as customer_name, k.abroad,
              (select max(f.filled_on) from filed_fill f where f.container_id = c.id) as filled_on,
              -- a fill later on the day that it was empty ends that
              (select max(e.emptied_on) from filed_emptying e where e.container_id = c.id and not exists (
                 select from filed_fill f where f.container_id = c.id and f.filled_on = e.emptied_on
                   and f.filled_at > e.emptied_at)) as emptied_on,
              (select json_agg(json_build_array(to_char(q.month, 'YYYY-MM'), q.method, q.star, q.plus, q.rin,
                   q.rin_seen, q.result, q.as_stamped, q.performed_on, q.declaration_id))
                 from filed_requalification q where q.container_id = c.id
                   and not exists (select from requalification_correction x where x.corrects = q.id)) as tests,
              (select json_agg(json_build_array(h.reason,
                   (h.occurred_at at time zone coalesce(s.zone, 'UTC'))::date, h.note))
                 from filed_hold h where h.container_id = c.id
                   and not exists (select from lift_in_force l where l.hold_id = h.id)) as holds,
              (select json_agg(json_build_array(t.kind, to_char(t.manufactured, 'YYYY-MM'), t.fitted_on, t.maker,
                   t.model, t.serial, t.labelled_for, r.removed_on, r.reason, r.for_good))
                 from filed_part t left join part_removal r on r.part_id = t.id where t.container_id = c.id) as parts,
              (select json_agg(json_build_array(o.since, b.returned_on, o.reason, b.note))
                 from filed_out_of_service o left join return_to_service b on b.out_of_service_id = o.id
                 where o.container_id = c.id) as stops,
              (select json_agg(json_build_array(d.id, d.declared_by, d.declared_on, d.statement, d.jurisdiction))
                 from declaration d where d.id = c.declaration_id or d.id = any (c.declared_in) or d.id in (
                   select q.declaration_id from filed_requalification q where q.container_id = c.id)) as declarations
            from container c
            cross join lateral (
              select coalesce(bool_or(j.jurisdiction <> i.jurisdiction), false) as abroad
              from placement p join site i on i.id = p.site_id join claimed_place j on j.container_id = p.container_id
              where p.container_id = c.id) k
            left join placement p on p.container_id = c.id and not k.abroad
            left join site s on s.id = p.site_id
            left join customer u on u.id = s.customer_id
            where not exists (select from absorbed a where a.container_id = c.id)
            order by c.specification collate "C", c.maker collate "C" nulls first, c.serial collate "C",
              c.manufactured nulls first, c.mark_scheme collate "C\"""";

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;
    private final TransactionTemplate snapshot;

    LedgerRows(JdbcClient jdbc, JsonMapper json, Clock clock, PlatformTransactionManager transactions) {
        snapshot = new TransactionTemplate(transactions);
        snapshot.setReadOnly(true);
        snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    void write(OutputStream to) throws IOException {
        var out = new BufferedWriter(new OutputStreamWriter(to, StandardCharsets.UTF_8), BUFFER);
        line(out, LedgerColumn.words());
        var today = LocalDate.now(clock.withZone(ZoneOffset.UTC));
        try {
            snapshot.executeWithoutResult(status -> each(new WrittenRow(json, today), out));
        } catch (UncheckedIOException gone) {
            throw gone.getCause();
        }
        out.flush();
    }

    private void each(WrittenRow row, Appendable out) {
        // compiled anew for each question, the statement would cost more than it gains
        jdbc.sql("select set_config('jit', 'off', true), " + Unhurried.SETTING).query((row1, n) -> "").single();
        try (var lines = jdbc.sql(SELECT).withFetchSize(FETCHED).query((line, n) -> row.cells(line)).stream()) {
            lines.forEach(cells -> {
                try {
                    line(out, Arrays.asList(cells));
                } catch (IOException gone) {
                    throw new UncheckedIOException(gone);
                }
            });
        }
    }

    /** RFC 4180. */
    private static void line(Appendable out, List<@Nullable String> cells) throws IOException {
        boolean first = true;
        for (var cell : cells) {
            out.append(first ? "" : ",");
            first = false;
            if (cell != null) {
                var text = SpreadsheetText.asItIs(cell);
                out.append(isPlain(text) ? text : '"' + text.replace("\"", "\"\"") + '"');
            }
        }
        out.append("\r\n");
    }

    private static boolean isPlain(String cell) {
        return cell.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
    }
}
