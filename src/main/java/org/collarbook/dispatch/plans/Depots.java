package org.collarbook.dispatch.plans;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.UUID;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The day at the depots. */
@Component
class Depots {

    private final JdbcClient jdbc;
    private final Clock clock;

    Depots(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Of no one depot the day that has begun at all from which routes start; null where the id is of no depot. */
    @Nullable
    LocalDate today(@Nullable UUID depot) {
        if (depot == null) {
            return jdbc.sql("select distinct zone from site where id in (select depot_id from route)")
                    .query(String.class).list().stream().map(this::today).min(Comparator.naturalOrder())
                    .orElseGet(() -> today("UTC"));
        }
        return jdbc.sql("select zone from site where id = ? and kind = 'DEPOT'").param(depot).query(String.class)
                .optional().map(this::today).orElse(null);
    }

    private LocalDate today(String zone) {
        return LocalDate.now(clock.withZone(ZoneId.of(zone)));
    }
}
