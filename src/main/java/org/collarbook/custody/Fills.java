package org.collarbook.custody;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
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
                .params(utc(clock.instant()), by,
                        fills.stream().map(fill -> Ids.next()).toArray(UUID[]::new),
                        fills.stream().map(Fill::containerId).toArray(UUID[]::new),
                        fills.stream().map(fill -> fill.filledOn().toString()).toArray(String[]::new),
                        fills.stream().map(Fills::net).toArray(String[]::new))
                .update();
    }

    private static @Nullable String net(Fill fill) {
        return fill.netLb() == null ? null : fill.netLb().toPlainString();
    }

    /** Refuses by problem a fill at the very moment of another one; nothing was written then. */
    @Transactional(propagation = Propagation.MANDATORY, noRollbackFor = ProblemException.class)
    public void append(MeasuredFill fill, Caller by) {
        if (jdbc.sql("select count(*) from filed_fill where container_id = ? and filled_at = ?")
                .params(fill.containerId(), utc(fill.filledAt())).query(Long.class).single() > 0) {
            throw Problem.conflict("ALREADY_RECORDED", "A fill of this container at " + fill.filledAt()
                    + " is recorded already. Nothing was stored.").asException();
        }
        var contents = fill.contents();
        jdbc.sql("""
                insert into fill (id, container_id, filled_on, net_lb, recorded_at, recorded_by, filled_at, gross_lb,
                  tare_lb, heel_lb, added_lb, gallons_added, liquid_temperature_f, product_id, specific_gravity,
                  most_net_lb, looked_at, leak_checked, leak_found, filled_by, observed_overfill, told_afterwards,
                  refused_for, site_id, rule_book_id)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(fill.id(), fill.containerId(), fill.filledOn(), contents.netLb(), utc(clock.instant()),
                        by.id(), utc(fill.filledAt()), contents.grossLb(), contents.tareLb(), contents.heelLb(),
                        contents.addedLb(), contents.gallonsAdded(), contents.liquidTemperatureF(), fill.productId(),
                        fill.specificGravity(), fill.mostNetLb(), fill.lookedAt(), fill.leakChecked(),
                        fill.leakFound(), fill.filledBy(), fill.observedOverfill(), fill.toldAfterwards(),
                        fill.refusedFor().stream().map(Enum::name).toArray(String[]::new),
                        fill.siteId(), fill.ruleBook())
                .update();
        events.publishEvent(new ContainerFilled(fill.containerId()));
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }

    public Optional<PastFill> find(UUID id) {
        return jdbc.sql(FillRows.SELECT + "where f.id = ?").param(id).query(FillRows::read).optional();
    }

    /** Those of the containers' fills that were made at a known moment, from that of each on; the earliest first. */
    public List<PastFill> madeSince(Map<UUID, Instant> since) {
        return jdbc.sql(FillRows.SELECT + """
                where f.container_id = any (:ids) and f.filled_at >= :first order by f.container_id, f.filled_at""")
                .param("ids", since.keySet().toArray(UUID[]::new))
                .param("first", utc(Collections.min(since.values()))).query(FillRows::read).list().stream()
                .filter(fill -> fill.filledAt() != null && !fill.filledAt().isBefore(since.get(fill.containerId())))
                .toList();
    }

    /** Whether nothing came after it: no other fill, and no emptying. */
    public boolean isLast(PastFill fill) {
        return jdbc
                .sql("""
                select not exists (select from filed_fill f where f.container_id = :container and f.filled_at > :at)
                  and not exists (select from filed_emptying e where e.container_id = :container and e.emptied_at >= :at)""")
                .param("container", fill.containerId())
                .param("at", utc(Objects.requireNonNull(fill.filledAt()))).query(Boolean.class).single();
    }

    /** The one of them that was recorded last. */
    public Optional<PastFill> lastRecorded(UUID container) {
        return jdbc.sql(FillRows.SELECT + """
                where f.container_id = ? and f.filled_at is not null order by f.recorded_at desc, f.id desc limit 1""")
                .param(container).query(FillRows::read).optional();
    }

    /** How often a container was filled, as recorded. */
    public long count(UUID container) {
        return jdbc.sql("select count(*) from filed_fill where container_id = ?").param(container).query(Long.class)
                .single();
    }

    /** A container's fills, the latest first; from just before the one given, when one is. */
    public List<PastFill> of(UUID container, @Nullable PastFill before, int atMost) {
        var at = before == null ? null : before.filledAt();
        return jdbc.sql(FillRows.SELECT + """
                where f.container_id = :container and (cast(:day as date) is null
                  or (f.filled_on, coalesce(f.filled_at, '-infinity'), f.id)
                     < (:day, coalesce(cast(:at as timestamptz), '-infinity'), cast(:id as uuid)))
                order by f.filled_on desc, coalesce(f.filled_at, '-infinity') desc, f.id desc limit :most""")
                .param("container", container).param("day", before == null ? null : before.filledOn())
                .param("at", at == null ? null : utc(at)).param("id", before == null ? null : before.id())
                .param("most", atMost).query(FillRows::read).list();
    }

    /** The day of the latest fill that is not after {@code asOf}, for those of the containers that have one. */
    public Map<UUID, LocalDate> latest(Collection<UUID> containers, LocalDate asOf) {
        var latest = new HashMap<UUID, LocalDate>();
        jdbc.sql("""
                select container_id, max(filled_on) from filed_fill
                where container_id = any (?) and filled_on <= ? group by container_id""")
                .params(containers.toArray(UUID[]::new), asOf).query(row -> {
                    latest.put(row.getObject(1, UUID.class), row.getObject(2, LocalDate.class));
                });
        return latest;
    }
}
