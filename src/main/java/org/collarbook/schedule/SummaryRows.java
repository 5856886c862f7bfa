package org.collarbook.schedule;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;

import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Counts the schedule in one statement, so in one snapshot. */
@Component
class SummaryRows {

    static final int MOST = 100_000;

    private static final String SELECT = """
            select part, due, site_id, s.code as site, s.name as site_name, status, counted from (
                select grouping(due, site_id) as part, due, site_id, status, count(*) as counted
                from (select r.due, r.site_id, %s as status %s where %s) line
                group by grouping sets ((due, status), (site_id, status)%s)
            ) found left join site s on s.id = site_id
            order by part, due, s.code, site_id, status limit :most""";
    /** As {@code grouping} tells which of the two a row is counted over: a bit is set for what it is not. */
    private static final int BY_BOTH = 0;
    private static final int BY_MONTH = 1;
    private static final int BY_SITE = 2;

    private final JdbcClient jdbc;

    SummaryRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    private record Counted(int part, @Nullable LocalDate due, @Nullable UUID siteId, @Nullable String site,
            @Nullable String siteName, String status, long counted) {

        static Counted read(ResultSet row, int number) throws SQLException {
            return new Counted(row.getInt("part"), row.getObject("due", LocalDate.class),
                    row.getObject("site_id", UUID.class), row.getString("site"), row.getString("site_name"),
                    row.getString("status"), row.getLong("counted"));
        }

        YearMonth month() {
            return YearMonth.from(Objects.requireNonNull(due));
        }
    }

    private record Group(Counted first, Map<String, Long> statuses) {

        long count() {
            return statuses.values().stream().mapToLong(Long::longValue).sum();
        }
    }

    ScheduleSummary count(Source source, ScheduleFilter filter, boolean cells) {
        var rows = jdbc.sql(source.read(SELECT.formatted(ScheduleRows.STATUS, ScheduleRows.JOINS, filter.where(),
                cells ? ", (due, site_id, status)" : ""))).params(filter.parameters())
                .param("now", source.now()).param("most", MOST + 1)
                .query(Counted::read).list();
        if (rows.size() > MOST) {
            throw Problem
                    .of(HttpStatus.UNPROCESSABLE_CONTENT, "LIST_TOO_LONG", "The summary would have more than " + MOST
                            + " counts: ask for fewer months, or for one customer or route.")
                    .asException();
        }
        var months = groups(rows, BY_MONTH).stream()
                .map(group -> new ScheduleSummary.Month(group.first.month(), group.count(), group.statuses)).toList();
        var sites = groups(rows, BY_SITE).stream().map(group -> new ScheduleSummary.AtSite(group.first.site(),
                group.first.siteName(), group.count(), group.statuses)).toList();
        return new ScheduleSummary(source.now().toInstant(),
                months.stream().mapToLong(ScheduleSummary.Month::count).sum(), months, sites,
                cells ? groups(rows, BY_BOTH).stream().map(SummaryRows::cell).toList() : null);
    }

    private static ScheduleSummary.Cell cell(Group group) {
        return new ScheduleSummary.Cell(group.first.month(), group.first.site(), group.count(), group.statuses);
    }

    /** The statuses of one month, site or cell follow each other. */
    private static List<Group> groups(List<Counted> rows, int part) {
        Function<Counted, List<@Nullable Object>> key = row -> Arrays.asList(row.due(), row.siteId());
        var groups = new LinkedHashMap<List<@Nullable Object>, Group>();
        rows.stream().filter(row -> row.part() == part).forEach(row -> groups
                .computeIfAbsent(key.apply(row), _ -> new Group(row, new LinkedHashMap<>())).statuses
                .put(row.status(), row.counted()));
        return new ArrayList<>(groups.values());
    }
}
