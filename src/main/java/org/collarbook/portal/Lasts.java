package org.collarbook.portal;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;

import org.collarbook.custody.ReadingSource;
import org.collarbook.platform.StoredMoment;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The latest fill and the latest gauge reading of a container, as far as they are the customer's to see. */
record Lasts(@Nullable LastFill fill, @Nullable Gauge gauge) {

    static final Lasts NONE = new Lasts(null, null);

    record Gauge(BigDecimal percent, Instant takenAt, LocalDate takenOn, ReadingSource source) {}

    /** Of many in one statement; read as the portal. */
    static Map<UUID, Lasts> read(JdbcClient jdbc, Collection<UUID> containers) {
        var found = new HashMap<UUID, Lasts>();
        jdbc.sql("""
                select c.id, f.filled_on, f.added_lb, f.gallons_added, f.net_lb, g.percent, g.gauged_at, g.gauged_on,
                    g.source
                from unnest(?::uuid[]) as c (id)
                left join lateral (
                    select l.* from latest_fill l where l.container_id = c.id
                    order by l.filled_on desc, l.filled_at desc nulls last, l.id desc limit 1) f on true
                left join lateral (
                    select r.* from reading r where r.container_id = c.id
                    order by r.gauged_at desc, r.id desc limit 1) g on true""")
                .param(containers.toArray(UUID[]::new)).query(row -> {
                    found.put(row.getObject("id", UUID.class), new Lasts(LastFill.read(row), gauge(row)));
                });
        return found;
    }

    private static @Nullable Gauge gauge(ResultSet row) throws SQLException {
        var percent = row.getBigDecimal("percent");
        return percent == null
                ? null
                : new Gauge(Plain.number(percent), StoredMoment.of(row, "gauged_at"),
                        row.getObject("gauged_on", LocalDate.class), ReadingSource.valueOf(row.getString("source")));
    }
}
