package org.collarbook.custody.routes;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.custody.Codes;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The routes as they are kept: what changes the days or the stops of one makes a new version of it. */
@Component
public class Routes {

    private final JdbcClient jdbc;
    private final Clock clock;

    Routes(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Refuses by problem a code that another route has. */
    @Transactional
    public Route open(RouteContent content) {
        var id = Ids.next();
        write(content, """
                insert into route (code, name, depot_id, vehicle_id, rule, first_day, on_holidays, id, created_at)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?)""", id, clock.instant().atOffset(ZoneOffset.UTC));
        writeStops(id, content);
        return find(id).orElseThrow();
    }

    /** Refuses by problem: not found, a missing or stale {@code If-Match}, a code that another route has. */
    @Transactional
    public Route change(UUID id, @Nullable String ifMatch, RouteContent content) {
        new Revision(locked(id).version()).requireMatch(ifMatch);
        write(content, "update route set code = ?, name = ?, depot_id = ?, vehicle_id = ?, rule = ?, first_day = ?,"
                + " on_holidays = ?, version = version + 1 where id = ?", id);
        jdbc.sql("delete from route_stop where route_id = ?").param(id).update();
        writeStops(id, content);
        return find(id).orElseThrow();
    }

    private void write(RouteContent content, String statement, Object... more) {
        try {
            jdbc.sql(statement).params(content.code(), content.name(), content.depot(), content.vehicle(),
                    content.rule().text(), content.from(), content.onHolidays()).params(more).update();
        } catch (DataIntegrityViolationException taken) {
            throw Codes.taken(taken, "route_code", "route", content.code());
        }
    }

    private void writeStops(UUID id, RouteContent content) {
        jdbc.sql("""
                insert into route_stop (route_id, position, site_id)
                select ?, position, site_id from unnest(?) with ordinality as stop (site_id, position)""")
                .params(id, content.stops().toArray(UUID[]::new)).update();
    }

    /**
     * Skips a day or adds one. Refuses by problem: not found, a day skipped that is no visit, a day added that is one;
     * what was said about the day before does not count.
     */
    @Transactional
    public Route except(UUID id, LocalDate day, ExceptionKind kind, String reason) {
        kind.check(locked(id).visits().without(day), day);
        int changed = jdbc.sql("""
                insert into route_exception as e (route_id, day, kind, reason) values (?, ?, ?, ?)
                on conflict (route_id, day) do update set kind = excluded.kind, reason = excluded.reason
                where (e.kind, e.reason) <> (excluded.kind, excluded.reason)""")
                .params(id, day, kind.name(), reason).update();
        jdbc.sql("update route set version = version + ? where id = ?").params(changed, id).update();
        return find(id).orElseThrow();
    }

    /** Refuses by problem a route that is not found and a day about which nothing is said. */
    @Transactional
    public void dropException(UUID id, LocalDate day) {
        locked(id);
        int dropped = jdbc.sql("delete from route_exception where route_id = ? and day = ?").params(id, day).update();
        if (dropped == 0) {
            throw Problem.notFound("exception").asException();
        }
        jdbc.sql("update route set version = version + 1 where id = ?").param(id).update();
    }

    /** So that two changes do not pass each other: it is read when nobody else can change it. */
    private Route locked(UUID id) {
        jdbc.sql("select id from route where id = ? for no key update").param(id).query(UUID.class).optional();
        return find(id).orElseThrow(() -> Problem.notFound("route").asException());
    }

    public Optional<Route> find(UUID id) {
        return jdbc.sql(Calendars.ROUTES + "where r.id = ?").param(id).query(Calendars::route).optional();
    }

    public Page<Route> page(@Nullable UUID after, PageSize size) {
        var read = jdbc.sql(Calendars.ROUTES + """
                where r.id > coalesce(?, '00000000-0000-0000-0000-000000000000'::uuid) order by r.id limit ?""")
                .params(after, size.limit()).query(Calendars::route).list();
        return Page.of(read, size, route -> Cursor.after(route.id()));
    }
}
