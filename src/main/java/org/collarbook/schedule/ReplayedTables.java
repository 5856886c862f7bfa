package org.collarbook.schedule;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.function.LongConsumer;

import org.collarbook.compliance.AsKnown;
import org.collarbook.compliance.AsKnown.Asked;
import org.collarbook.compliance.AsKnown.Replayed;
import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainer.Where;
import org.collarbook.compliance.ReplayedClock;
import org.collarbook.platform.BulkCopy;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Assesses a fleet anew, by chunks, into tables that last as long as the transaction: see {@link Source#replayed}. */
@Component
class ReplayedTables {

    private static final int CHUNK = 1000;

    private static final List<String> TABLES = List.of("""
            create temporary table replayed_asked (n bigint primary key, id uuid not null, day date not null)
            on commit drop""", """
            create temporary table replayed_clock (container_id uuid, requirement text, jurisdiction text, standing text,
              due date, status text, rule text, reasons text[], site_id uuid, customer_id uuid) on commit drop""", """
            create temporary table replayed_container (id uuid, kind text, specification text, maker text, serial text,
              manufactured date, size text, tag text, owned boolean, owner text) on commit drop""", """
            create temporary table replayed_site (id uuid, code text, name text, zone text) on commit drop""");

    /** What was ever moved to the place, by a movement of its own or one that is filed under it. */
    private static final String EVER_AT = """
             and c.id in (
               with there as (select f.id, f.container_id from movement f where f.to_site_id in (%s))
               select container_id from there
               union select m.into_id from identity_act_fact m join there on there.id = m.fact_id)""";

    private static final String ASK = """
            insert into replayed_asked (n, id, day)
            select row_number() over (order by c.id), c.id, coalesce(cast(:as_of as date),
              (cast(:now as timestamptz) at time zone coalesce(s.zone, 'UTC'))::date)
            from container c left join absorbed a on a.container_id = c.id
            left join placement p on p.container_id = c.id and a.container_id is null
            left join site s on s.id = p.site_id where c.registered_at <= :known %s order by c.id limit :most""";

    private final JdbcClient jdbc;
    private final BulkCopy copy;
    private final AsKnown asKnown;
    private final Clock clock;

    ReplayedTables(JdbcClient jdbc, BulkCopy copy, AsKnown asKnown, Clock clock) {
        this.jdbc = jdbc;
        this.copy = copy;
        this.asKnown = asKnown;
        this.clock = clock;
    }

    /** How many containers may be on the schedule that is asked for, but no more than {@code most} of them. */
    @Transactional(propagation = Propagation.MANDATORY)
    public long ask(ScheduleFilter filter, Replay replay, long most) {
        TABLES.forEach(table -> jdbc.sql(table).update());
        return jdbc.sql(ASK.formatted(everAt(filter))).params(filter.parameters()).param("as_of", replay.asOf())
                .param("now", OffsetDateTime.now(clock.withZone(ZoneOffset.UTC)))
                .param("known", replay.knownAt().atOffset(ZoneOffset.UTC)).param("most", most).update();
    }

    private static String everAt(ScheduleFilter filter) {
        return (filter.site() == null ? "" : EVER_AT.formatted(":site"))
                + (filter.customer() == null
                        ? ""
                        : EVER_AT.formatted("select v.site_id from site_version v where v.customer_id = :customer"))
                + (filter.route() == null
                        ? ""
                        : EVER_AT.formatted("select stop.site_id from route_stop stop where stop.route_id = :route"));
    }

    /** Assesses those that were asked for; {@code done} is told how many there are so far. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void fill(Replay replay, long asked, LongConsumer done) {
        var sites = new HashMap<UUID, Where>();
        for (long from = 0; from < asked; from += CHUNK) {
            var chunk = asKnown.each(jdbc.sql("select id, day from replayed_asked where n > ? and n <= ?")
                    .params(from, from + CHUNK)
                    .query((row, number) -> new Asked(row.getObject(1, UUID.class),
                            row.getObject(2, LocalDate.class)))
                    .list(), replay.knownAt());
            write(chunk);
            chunk.stream().map(one -> one.container().where()).filter(Objects::nonNull)
                    .forEach(where -> sites.put(where.siteId(), where));
            done.accept(Math.min(asked, from + CHUNK));
        }
        copy.into("replayed_site (id, code, name, zone)", sites.values(), where -> new @Nullable Object[]{
                where.siteId(), where.siteCode(), where.siteName(), where.zone()});
        List.of("replayed_clock", "replayed_container", "replayed_site")
                .forEach(table -> jdbc.sql("analyze " + table).update());
    }

    private record OneClock(KnownContainer of, ReplayedClock clock) {

        @Nullable
        Object[] columns() {
            var where = of.where();
            var place = clock.jurisdiction();
            return new @Nullable Object[]{of.id(), clock.requirement(), place == null ? "" : place.code(),
                    clock.standing(), clock.due(), clock.status(), clock.rule(),
                    clock.reasons().stream().map(Enum::name).toArray(String[]::new),
                    where == null ? null : where.siteId(), where == null ? null : where.customerId()};
        }
    }

    private void write(Collection<Replayed> chunk) {
        copy.into("replayed_clock (container_id, requirement, jurisdiction, standing, due, status, rule, reasons,"
                + " site_id, customer_id)",
                chunk.stream().flatMap(one -> one.clocks().stream()
                        .map(clock -> new OneClock(one.container(), clock))).toList(),
                OneClock::columns);
        copy.into("replayed_container (id, kind, specification, maker, serial, manufactured, size, tag, owned, owner)",
                chunk, one -> columns(one.container()));
    }

    private static @Nullable Object[] columns(KnownContainer known) {
        var container = known.container();
        var marks = container.marks();
        var owner = container.particulars().ownership();
        var made = marks.manufactured();
        return new @Nullable Object[]{known.id(), marks.kind(), marks.specification().value(), marks.maker(),
                marks.serial().value().value(), made == null ? null : made.value().atDay(1), container.size().word(),
                container.tag() == null ? null : container.tag().value(), owner.owned(), owner.owner()};
    }
}
