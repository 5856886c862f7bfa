package org.collarbook.custody.routes;

import java.time.LocalDate;
import java.util.List;

import org.collarbook.platform.Problem;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The days on which only the routes are driven that are driven on holidays. */
@Component
public class Holidays {

    public record Holiday(LocalDate day, String name) {}

    private final JdbcClient jdbc;

    Holidays(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Both ends included. */
    public List<Holiday> between(LocalDate first, LocalDate last) {
        return jdbc.sql("select day, name from holiday where day between ? and ? order by day").params(first, last)
                .query(Holiday.class).list();
    }

    @Transactional
    public Holiday name(LocalDate day, String name) {
        jdbc.sql("insert into holiday (day, name) values (?, ?) on conflict (day) do update set name = excluded.name")
                .params(day, name).update();
        return new Holiday(day, name);
    }

    /** Refuses by problem a day that is no holiday. */
    @Transactional
    public void drop(LocalDate day) {
        if (jdbc.sql("delete from holiday where day = ?").param(day).update() == 0) {
            throw Problem.notFound("holiday").asException();
        }
    }
}
