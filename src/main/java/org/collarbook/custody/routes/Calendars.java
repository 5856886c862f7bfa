package org.collarbook.custody.routes;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Pattern;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads the calendars of routes, each with all that decides about its days, in one statement. */
@Component
public class Calendars {

    static final String ROUTES = """
            select r.id, r.version, r.code, r.name, r.depot_id, r.vehicle_id, r.rule, r.first_day, r.on_holidays,
                array(select site_id from route_stop s where s.route_id = r.id order by s.position) as stops,
                array(select e.day || ' ' || e.reason from route_exception e
                    where e.route_id = r.id and e.kind = 'SKIPPED') as skipped,
                array(select e.day || ' ' || e.reason from route_exception e
                    where e.route_id = r.id and e.kind = 'ADDED') as added,
                array(select h.day || ' ' || h.name from holiday h) as holidays
            from route r
            """;

    /** The named routes ({@code n}), and all that share a stop with one of them. */
    static final String AND_NEIGHBOURS = """
            where r.id in (
                select n.id from route n where %1$s
                union
                select other.route_id from route n join route_stop mine on mine.route_id = n.id
                join route_stop other on other.site_id = mine.site_id where %1$s)""";
    private static final Pattern ID = Pattern.compile("\\p{XDigit}{8}(-\\p{XDigit}{4}){3}-\\p{XDigit}{12}");

    private final JdbcClient jdbc;

    Calendars(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Of a route, by its id or code, and of every other route that calls at one of its stops. */
    public VisitCalendar around(String route) {
        return read(jdbc.sql(ROUTES + AND_NEIGHBOURS.formatted("n.id = cast(:id as uuid) or n.code = :code"))
                .param("id", ID.matcher(route).matches() ? route : null).param("code", route));
    }

    /** Of the routes that load at a depot, and of every other route that calls at one of their stops. */
    public VisitCalendar ofDepot(UUID depot) {
        return read(jdbc.sql(ROUTES + AND_NEIGHBOURS.formatted("n.depot_id = :depot")).param("depot", depot));
    }

    /** Of the routes that call at any of the sites. */
    public VisitCalendar ofSites(Collection<UUID> sites) {
        return read(jdbc.sql(ROUTES + "where r.id in (select route_id from route_stop where site_id = any (:sites))")
                .param("sites", sites.toArray(UUID[]::new)));
    }

    public VisitCalendar all() {
        return read(jdbc.sql(ROUTES));
    }

    private static VisitCalendar read(JdbcClient.StatementSpec asked) {
        return new VisitCalendar(asked.query(Calendars::route).list());
    }

    static Route route(ResultSet row, int number) throws SQLException {
        var visits = new VisitPattern(new VisitRule(row.getString("rule")),
                row.getObject("first_day", LocalDate.class), row.getBoolean("on_holidays"), days(row, "skipped"),
                days(row, "added"), days(row, "holidays"));
        return new Route(row.getObject("id", UUID.class), row.getInt("version"), row.getString("code"),
                row.getString("name"), row.getObject("depot_id", UUID.class), row.getObject("vehicle_id", UUID.class),
                visits, List.of((UUID[]) row.getArray("stops").getArray()));
    }

    private static NavigableMap<LocalDate, String> days(ResultSet row, String column) throws SQLException {
        var days = new TreeMap<LocalDate, String>();
        for (var day : (String[]) row.getArray(column).getArray()) {
            days.put(LocalDate.parse(day.substring(0, 10)), day.substring(11));
        }
        return days;
    }
}
