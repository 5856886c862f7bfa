package org.collarbook.schedule;

import java.io.IOException;
import java.io.OutputStream;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.List;
import java.util.UUID;
import java.util.function.UnaryOperator;

import org.collarbook.compliance.MissingFacts;
import org.collarbook.platform.BulkCopyOut;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.SpreadsheetText;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import io.swagger.v3.oas.annotations.media.Schema;

/** Clocks whose due month cannot be told, so that no month of the schedule has them. */
@Component
class UndeterminedRows {

    /** Of what is held or rejected the stored word hides whether the month is known, so what is missing decides. */
    static final String CONDITION = """
            r.due is null and r.standing in ('UNDETERMINED', 'ON_HOLD', 'REJECTED')
              and (r.standing = 'UNDETERMINED' or r.reasons && cast(:missing as text[]))""";
    private static final String SELECT = """
            select %s as status, r.requirement, r.jurisdiction, r.reasons, c.id as container_id, c.kind,
                c.specification, c.maker, c.serial, c.manufactured, c.size, c.tag, s.code as site, s.name as site_name,
                u.code as customer, %s as owner""".formatted(ScheduleRows.STATUS, ScheduleRows.OWNER)
            + ScheduleRows.JOINS + " where " + CONDITION;

    private static final String ORDER = " order by r.container_id, r.requirement, r.jurisdiction";
    private static final String FILE = file(SpreadsheetText::guardedInSql);
    private static final String PLAIN_FILE = file(column -> column);

    private static String file(UnaryOperator<String> text) {
        return """
                select %s as status, r.requirement,
                    array_to_string(array(select code from unnest(r.reasons) code where code = any (:missing)), ' ')
                        as missing, c.kind, %s as specification, %s as maker, %s as serial,
                    to_char(c.manufactured, 'YYYY-MM') as manufactured, c.size, %s as tag, %s as site, %s as site_name,
                    %s as customer, %s as owner, c.id as container_id, nullif(r.jurisdiction, '') as jurisdiction"""
                .formatted(ScheduleRows.STATUS, text.apply("c.specification"), text.apply("c.maker"),
                        text.apply("c.serial"), text.apply("c.tag"), text.apply("s.code"), text.apply("s.name"),
                        text.apply("u.code"), text.apply("(" + ScheduleRows.OWNER + ")"))
                + ScheduleRows.JOINS + " where " + CONDITION;
    }

    private final JdbcClient jdbc;
    private final BulkCopyOut copyOut;

    UndeterminedRows(JdbcClient jdbc, BulkCopyOut copyOut) {
        this.copyOut = copyOut;
        this.jdbc = jdbc;
    }

    /** One requirement of one container of which nobody can say when it falls due; {@code missing} says why. */
    @Schema(name = "UndeterminedClock")
    record Undetermined(String status, String requirement, @Nullable String jurisdiction, List<String> missing,
            UUID containerId, String kind, String specification, @Nullable String maker, String serial,
            @Nullable YearMonth manufactured, String size, @Nullable String tag, @Nullable String site,
            @Nullable String siteName, @Nullable String customer, @Nullable String owner) {

        static Undetermined read(ResultSet row, int number) throws SQLException {
            var jurisdiction = row.getString("jurisdiction");
            var manufactured = row.getObject("manufactured", LocalDate.class);
            return new Undetermined(row.getString("status"), row.getString("requirement"),
                    jurisdiction.isEmpty() ? null : jurisdiction,
                    MissingFacts.of(List.of((String[]) row.getArray("reasons").getArray())),
                    row.getObject("container_id", UUID.class), row.getString("kind"), row.getString("specification"),
                    row.getString("maker"), row.getString("serial"),
                    manufactured == null ? null : YearMonth.from(manufactured), row.getString("size"),
                    row.getString("tag"), row.getString("site"), row.getString("site_name"), row.getString("customer"),
                    row.getString("owner"));
        }

        Cursor cursor() {
            return Cursor.after(containerId, requirement, jurisdiction == null ? "" : jurisdiction);
        }
    }

    List<Undetermined> page(Source source, ScheduleFilter filter, @Nullable Cursor after, PageSize size) {
        var parameters = new HashMap<>(filter.parameters());
        if (after != null) {
            parameters.put("after_container", UUID.fromString(after.key().get(0)));
            parameters.put("after_requirement", after.key().get(1));
            parameters.put("after_jurisdiction", after.key().get(2));
        }
        return jdbc.sql(source.read(pageOf(filter, after != null))).params(parameters)
                .param("now", source.now())
                .param("missing", MissingFacts.codes().toArray(String[]::new)).param("limit", size.limit())
                .query(Undetermined::read).list();
    }

    /** All of them as CSV, how many there are. */
    long write(Source source, ScheduleFilter filter, boolean plain, OutputStream out) throws IOException {
        var parameters = new HashMap<>(filter.parameters());
        parameters.put("now", source.now());
        parameters.put("missing", MissingFacts.codes().toArray(String[]::new));
        try {
            return copyOut.write("copy (" + Literals.inline(source.read((plain ? PLAIN_FILE : FILE)
                    + filter.conditions() + ORDER), parameters) + ") to stdout with (format csv, header)", out);
        } catch (SQLException e) {
            throw new IllegalStateException("what is undetermined could not be written to its end", e);
        }
    }

    static String pageOf(ScheduleFilter filter, boolean continued) {
        return SELECT + filter.conditions() + (continued
                ? " and (r.container_id, r.requirement, r.jurisdiction)"
                        + " > (:after_container, :after_requirement, :after_jurisdiction)"
                : "") + ORDER + " limit :limit";
    }
}
