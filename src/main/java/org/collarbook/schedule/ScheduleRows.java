package org.collarbook.schedule;

import java.io.IOException;
import java.io.OutputStream;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

import org.collarbook.platform.Unhurried;
import org.collarbook.platform.BulkCopyOut;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.SpreadsheetText;
import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/** Reads the schedule in the order (due month, container, requirement, jurisdiction), which is also the order of its index. */
@Component
class ScheduleRows {

    static final String STATUS = "container_status(r.standing, r.due, r.filled_in_time, r.changes_on, r.changes_to, "
            + "(:now at time zone coalesce(s.zone, 'UTC'))::date)";

    private static final int FETCHED = 1000;
    static final String OWNER = "case when c.owned then '" + ScheduleFilter.OWN + "' else c.owner end";
    static final String JOINS = """

            from requirement r
            join container c on c.id = r.container_id
            left join site s on s.id = r.site_id
            left join customer u on u.id = r.customer_id""";
    private static final String FROM = JOINS + " where ";
    /** For a whole file the codes of each site's routes are put together once, for a page where they are asked for. */
    private static final String FROM_ALL = JOINS + """

            left join (select stop.site_id, string_agg(route.code, ', ' order by route.code) as codes
                    from route_stop stop join route on route.id = stop.route_id group by stop.site_id) calls
                on calls.site_id = r.site_id
            where\s""";
    private static final String ORDER = " order by r.due, r.container_id, r.requirement, r.jurisdiction";
    private static final String PAGE = """
            select r.due, (r.due + interval '1 month' - interval '1 day')::date as last_day, %s as status,
                   r.requirement, nullif(r.jurisdiction, '') as jurisdiction, r.rule, c.id as container_id, c.kind,
                   c.specification, c.maker, c.serial, c.manufactured, c.size, c.tag, s.code as site,
                   s.name as site_name, u.code as customer, %s as owner,
                   (select string_agg(route.code, chr(10) order by route.code)
                    from route_stop stop join route on route.id = stop.route_id
                    where stop.site_id = r.site_id) as routes"""
            .formatted(STATUS, OWNER);
    private static final String FILE = file(SpreadsheetText::guardedInSql);
    /** For machines: text as it is. */
    private static final String PLAIN_FILE = file(column -> column);

    private static String file(UnaryOperator<String> text) {
        return """
                select to_char(r.due, 'YYYY-MM') as due,
                       (r.due + interval '1 month' - interval '1 day')::date as last_day, %s as status, r.requirement,
                       r.rule, c.kind, %s as specification, %s as maker, %s as serial,
                       to_char(c.manufactured, 'YYYY-MM') as manufactured, c.size, %s as tag, %s as site,
                       %s as site_name, %s as customer, %s as owner, %s as routes, c.id as container_id,
                       nullif(r.jurisdiction, '') as jurisdiction"""
                .formatted(STATUS, text.apply("c.specification"), text.apply("c.maker"), text.apply("c.serial"),
                        text.apply("c.tag"), text.apply("s.code"), text.apply("s.name"), text.apply("u.code"),
                        text.apply("(" + OWNER + ")"), text.apply("calls.codes"));
    }

    private final JdbcClient jdbc;
    private final BulkCopyOut copyOut;
    private final TransactionTemplate snapshot;

    ScheduleRows(JdbcClient jdbc, BulkCopyOut copyOut, PlatformTransactionManager transactions) {
        snapshot = new TransactionTemplate(transactions);
        snapshot.setReadOnly(true);
        snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.jdbc = jdbc;
        this.copyOut = copyOut;
    }

    List<ScheduleRow> page(Source source, ScheduleFilter filter, @Nullable Cursor after, PageSize size) {
        var parameters = parameters(source, filter);
        if (after != null) {
            parameters.put("after_due", WrittenTime.day(after.key().get(0)));
            parameters.put("after_container", UUID.fromString(after.key().get(1)));
            parameters.put("after_requirement", after.key().get(2));
            parameters.put("after_jurisdiction", after.key().get(3));
        }
        return jdbc.sql(source.read(pageOf(filter, after != null))).params(parameters)
                .param("limit", size.limit()).query(ScheduleRow.class).list();
    }

    static String pageOf(ScheduleFilter filter, boolean continued) {
        return PAGE + FROM + filter.where() + (continued
                ? " and (r.due, r.container_id, r.requirement, r.jurisdiction)"
                        + " > (:after_due, :after_container, :after_requirement, :after_jurisdiction)"
                : "") + ORDER + " limit :limit";
    }

    /** Each row in turn, in the order of the pages, by a cursor of the transaction: some hundred are in memory. */
    void each(Source source, ScheduleFilter filter, Consumer<ScheduleRow> reader) {
        snapshot.executeWithoutResult(status -> {
            Unhurried.go(jdbc);
            try (var rows = jdbc.sql(source.read(PAGE + FROM + filter.where() + ORDER)).withFetchSize(FETCHED)
                    .params(parameters(source, filter)).query(ScheduleRow.class).stream()) {
                rows.forEach(reader);
            }
        });
    }

    /** The whole schedule as CSV, how many rows it has; straight from the server's COPY to the stream: one snapshot, constant memory. */
    long write(Source source, ScheduleFilter filter, boolean plain, OutputStream out) throws IOException {
        try {
            return copyOut.write(copy(source, filter, plain), out);
        } catch (SQLException e) {
            throw new IllegalStateException("the schedule could not be written to its end", e);
        }
    }

    String copy(Source source, ScheduleFilter filter, boolean plain) {
        return "copy (" + Literals.inline(source.read((plain ? PLAIN_FILE : FILE) + FROM_ALL + filter.where() + ORDER),
                parameters(source, filter)) + ") to stdout with (format csv, header)";
    }

    /** The years in which something falls due. */
    List<Integer> years(Source source, ScheduleFilter filter) {
        return jdbc.sql(source.read("select distinct cast(extract(year from r.due) as int)" + FROM + filter.where()
                + " order by 1")).params(parameters(source, filter)).query(Integer.class).list();
    }

    /** The rows of the plain file, into a table that lasts as long as the transaction. */
    void keep(Source source, ScheduleFilter filter, String table) {
        jdbc.sql("create temporary table " + table + " on commit drop as " + Literals.inline(
                source.read(PLAIN_FILE + FROM_ALL + filter.where()), parameters(source, filter))).update();
    }

    private static Map<String, Object> parameters(Source source, ScheduleFilter filter) {
        var parameters = new HashMap<>(filter.parameters());
        parameters.put("now", source.now());
        return parameters;
    }
}
