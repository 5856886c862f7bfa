package org.collarbook.schedule;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What falls due at each site in each month, counted by size, requirement and status. */
@Component
class CalendarRows {

    static final int MOST = 50_000;

    private static final String SELECT = """
            select due, site_id, site, site_name, size, requirement, status, count(*) as counted
            from (select r.due, r.site_id, s.code as site, s.name as site_name, c.size, r.requirement, %s as status
                  %s where %s) line
            group by due, site_id, site, site_name, size, requirement, status
            order by due, site, site_id, counted desc, size, requirement, status limit :most""";

    private final JdbcClient jdbc;

    CalendarRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Counted(YearMonth month, @Nullable UUID siteId, @Nullable String site, @Nullable String siteName,
            String size, String requirement, String status, long count) {

        static Counted read(ResultSet row, int number) throws SQLException {
            return new Counted(YearMonth.from(row.getObject("due", LocalDate.class)),
                    row.getObject("site_id", UUID.class), row.getString("site"), row.getString("site_name"),
                    row.getString("size"), row.getString("requirement"), row.getString("status"),
                    row.getLong("counted"));
        }

        LocalDate lastDay() {
            return month.atEndOfMonth();
        }
    }

    List<Counted> count(Source source, ScheduleFilter filter) {
        var rows = jdbc.sql(SELECT.formatted(ScheduleRows.STATUS, ScheduleRows.JOINS, filter.where()))
                .params(filter.parameters()).param("now", source.now())
                .param("most", MOST + 1).query(Counted::read).list();
        if (rows.size() > MOST) {
            throw Problem.of(HttpStatus.UNPROCESSABLE_CONTENT, "LIST_TOO_LONG", "The calendar would have more than "
                    + MOST + " lines: ask for fewer months, or for one customer or route.").asException();
        }
        return rows;
    }
}
