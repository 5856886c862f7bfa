package org.collarbook.custody;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Ids;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Fills as facts. Whether one was lawful is judged elsewhere, before it is recorded here. */
@Component
public class Fills {

    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Fills(JdbcClient jdbc, ApplicationEventPublisher events, Clock clock) {
        this.jdbc = jdbc;
        this.events = events;
        this.clock = clock;
    }

    /** False when this very fill is recorded already. */
    @Transactional
    public boolean record(Fill fill, Caller by) {
        boolean isNew = insert(List.of(fill), by.id()) == 1;
        if (isNew) {
            events.publishEvent(new ContainerFilled(fill.containerId()));
        }
        return isNew;
    }

    /** How many were new; a fill recorded before is left as it is. */
    @Transactional(propagation = Propagation.REQUIRED)
    public int insert(List<Fill> fills, UUID by) {
        return jdbc.sql("""
                insert into fill (id, container_id, filled_on, net_lb, recorded_at, recorded_by)
                select id, container, day, net, ?, ?
                from unnest(?::uuid[], ?::uuid[], ?::date[], ?::numeric[]) as f (id, container, day, net)
                on conflict on constraint fill_once do nothing""")
                .params(clock.instant().atOffset(ZoneOffset.UTC), by,
                        fills.stream().map(fill -> Ids.next()).toArray(UUID[]::new),
                        fills.stream().map(Fill::containerId).toArray(UUID[]::new),
                        fills.stream().map(fill -> fill.filledOn().toString()).toArray(String[]::new),
                        fills.stream().map(Fills::net).toArray(String[]::new))
                .update();
    }

    private static @Nullable String net(Fill fill) {
        return fill.netLb() == null ? null : fill.netLb().toPlainString();
    }

    /** The day of the latest fill that is not after {@code asOf}, for those of the containers that have one. */
    public Map<UUID, LocalDate> latest(Collection<UUID> containers, LocalDate asOf) {
        var latest = new HashMap<UUID, LocalDate>();
        jdbc.sql("""
                select container_id, max(filled_on) from fill
                where container_id = any (?) and filled_on <= ? group by container_id""")
                .params(containers.toArray(UUID[]::new), asOf).query(row -> {
                    latest.put(row.getObject(1, UUID.class), row.getObject(2, LocalDate.class));
                });
        return latest;
    }
}
