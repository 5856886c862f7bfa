package org.collarbook.compliance.swaps;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.compliance.LoadedRuleBook;
import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.StoredMoment;
import org.collarbook.regulation.Reason;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What was taken away and what was left, by site. */
@Component
class Swaps {

    private final JdbcClient jdbc;
    private final LoadedRuleBook rules;
    private final Clock clock;

    Swaps(JdbcClient jdbc, LoadedRuleBook rules, Clock clock) {
        this.jdbc = jdbc;
        this.rules = rules;
        this.clock = clock;
    }

    /** The containers are those for which the movements count now. */
    record Swap(UUID id, UUID site, UUID vehicle, @Nullable UUID out, @Nullable UUID in, List<String> refusedFor,
            Instant occurredAt, Instant recordedAt) {}

    UUID append(SwapCommand swap, RecordSwap.@Nullable Moved out, RecordSwap.@Nullable Moved in,
            List<Reason> refusals, Caller by) {
        var id = Ids.next();
        jdbc.sql("""
                insert into swap (id, site_id, vehicle_id, out_movement_id, in_movement_id, refused_for, rule_book_id,
                    occurred_at, recorded_at, recorded_by) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(id, swap.site().siteId(), swap.vehicle().siteId(), out == null ? null : out.movementId(),
                        in == null ? null : in.movementId(),
                        refusals.stream().map(reason -> reason.code().name()).distinct().toArray(String[]::new),
                        rules.id(), swap.at().atOffset(ZoneOffset.UTC), clock.instant().atOffset(ZoneOffset.UTC),
                        by.id())
                .update();
        return id;
    }

    /** The latest recorded first. */
    List<Swap> at(UUID site, @Nullable UUID before, PageSize size) {
        return jdbc.sql("""
                select w.*, (select f.container_id from filed_movement f where f.id = w.out_movement_id) as out_id,
                    (select f.container_id from filed_movement f where f.id = w.in_movement_id) as in_id
                from swap w where w.site_id = :site
                  and w.id < coalesce(:before::uuid, 'ffffffff-ffff-ffff-ffff-ffffffffffff')
                order by w.id desc limit :most""").param("site", site).param("before", before)
                .param("most", size.limit()).query(Swaps::read).list();
    }

    private static Swap read(ResultSet row, int number) throws SQLException {
        return new Swap(row.getObject("id", UUID.class), row.getObject("site_id", UUID.class),
                row.getObject("vehicle_id", UUID.class), row.getObject("out_id", UUID.class),
                row.getObject("in_id", UUID.class), List.of((String[]) row.getArray("refused_for").getArray()),
                StoredMoment.of(row, "occurred_at"),
                StoredMoment.of(row, "recorded_at"));
    }
}
