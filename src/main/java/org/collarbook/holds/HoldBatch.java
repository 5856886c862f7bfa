package org.collarbook.holds;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;

import org.collarbook.platform.Ids;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** The holds that a ledger tells of, many at a time; publishes no events. */
@Component
public class HoldBatch {

    /** {@code since} is the day where the container stands; null is now. */
    public record Line(UUID containerId, HoldReason reason, @Nullable LocalDate since, @Nullable String note) {}

    private final JdbcClient jdbc;
    private final Clock clock;

    HoldBatch(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** One statement. A container that is condemned is held all the same: its ledger says so. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void place(List<Line> lines, UUID ledger, UUID by) {
        jdbc.sql("""
                insert into hold (id, container_id, reason, note, import_id, occurred_at, recorded_at, recorded_by)
                select g.id, g.container, g.reason, g.note, :ledger,
                    least(:now, coalesce(g.day::timestamp at time zone coalesce(s.zone, 'UTC'), :now)), :now, :by
                from unnest(:ids::uuid[], :containers::uuid[], :reasons::text[], :notes::text[], :days::date[])
                    as g (id, container, reason, note, day)
                  left join placement p on p.container_id = g.container left join site s on s.id = p.site_id""")
                .param("ledger", ledger).param("now", clock.instant().atOffset(ZoneOffset.UTC)).param("by", by)
                .param("ids", lines.stream().map(line -> Ids.next()).toArray(UUID[]::new))
                .param("containers", lines.stream().map(Line::containerId).toArray(UUID[]::new))
                .param("reasons", texts(lines, line -> line.reason().name()))
                .param("notes", texts(lines, Line::note))
                .param("days", texts(lines, line -> line.since() == null ? null : line.since().toString())).update();
    }

    private static @Nullable String[] texts(List<Line> lines, Function<Line, @Nullable String> text) {
        return lines.stream().map(text).toArray(String[]::new);
    }
}
