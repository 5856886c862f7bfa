package org.collarbook.dispatch.plans;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
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

    /** Of no one depot the one that has begun everywhere; null where the id is of no depot. */
    @Nullable
    LocalDate today(@Nullable UUID depot) {
        if (depot == null) {
            return LocalDate.now(clock.withZone(ZoneOffset.ofHours(-12)));
        }
        return jdbc.sql("select zone from site where id = ? and kind = 'DEPOT'").param(depot).query(String.class)
                .optional().map(zone -> LocalDate.now(clock.withZone(ZoneId.of(zone)))).orElse(null);
    }
}
