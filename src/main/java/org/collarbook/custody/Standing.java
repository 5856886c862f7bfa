package org.collarbook.custody;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Where containers stand by the movements and sightings that count for them, and which other places claim them. The
 * latest movement by the time it happened decides. Of several at one moment each that starts where another led follows
 * it; else the first recorded decides, and the others are claims. So is where it was seen since, until somebody sees it
 * later where it is recorded, or moves it.
 */
@Component
class Standing {

    /** The movement that decides, by the moment asked about. */
    private static final String PLACED = """
            select m.id, m.to_site_id, m.occurred_at from filed_movement m
            where m.container_id = c.id and m.occurred_at <= :at and not exists (
              select from filed_movement n where n.container_id = c.id and n.occurred_at = m.occurred_at
                and n.from_site_id = m.to_site_id and (n.recorded_at, n.id) > (m.recorded_at, m.id))
            order by m.occurred_at desc, m.recorded_at, m.id limit 1""";

    private static final String CLAIMED = """
            select s.site_id, min(s.occurred_at) as since from (
              select m.to_site_id as site_id, m.occurred_at from filed_movement m
              where m.container_id = c.id and m.occurred_at = p.occurred_at and not exists (
                select from filed_movement n where n.container_id = c.id and n.occurred_at = m.occurred_at
                  and n.from_site_id = m.to_site_id and (n.recorded_at, n.id) > (m.recorded_at, m.id))
              union all
              select g.site_id, g.occurred_at from filed_sighting g
              where g.container_id = c.id and g.occurred_at between p.occurred_at and :at and not exists (
                -- it was just taken away
                select from filed_movement f where f.container_id = c.id and f.occurred_at = g.occurred_at
                  and f.from_site_id = g.site_id)) s
            where s.site_id <> p.to_site_id and not exists (
              select from filed_sighting k where k.container_id = c.id and k.site_id = p.to_site_id
                and k.occurred_at > s.occurred_at and k.occurred_at <= :at)
            group by s.site_id""";

    private static final String BY_THEN = "from unnest(:ids) as c (id) cross join lateral (" + PLACED
            + ") p cross join lateral (" + CLAIMED + ") k";

    private final JdbcClient jdbc;

    Standing(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Derives anew what is kept of these, of facts that were just recorded. */
    void settle(Collection<UUID> containers) {
        var ids = containers.toArray(UUID[]::new);
        // a statement of its own: what a ledger that the lock has waited for has moved is seen by the next one only
        jdbc.sql("select container_id from placement where container_id = any (?) order by container_id for update")
                .param(ids).query(UUID.class).list();
        jdbc.sql("insert into placement (container_id, site_id, movement_id, since)"
                + " select c.id, p.to_site_id, p.id, p.occurred_at from unnest(:ids) as c (id) cross join lateral ("
                + PLACED + ") p" + """

                on conflict (container_id) do update set site_id = excluded.site_id,
                  movement_id = excluded.movement_id, since = excluded.since
                  where placement.movement_id <> excluded.movement_id and placement.since <= excluded.since""")
                .param("ids", ids)
                .param("at", OffsetDateTime.MAX).update();
        claim(ids);
    }

    private void claim(UUID[] ids) {
        jdbc.sql("with claims as (select c.id as container_id, k.site_id, k.since " + BY_THEN + ")," + """
                every as (
                  select container_id, site_id, false as recorded, since from claims
                  union all
                  select container_id, site_id, true, since from placement
                  where container_id in (select container_id from claims)),
                ended as (
                  delete from place_claim old where container_id = any (:ids) and not exists (
                    select from every e where e.container_id = old.container_id and e.site_id = old.site_id))
                insert into place_claim (container_id, site_id, recorded, since) select * from every
                on conflict (container_id, site_id) do update set recorded = excluded.recorded, since = excluded.since
                  where (place_claim.recorded, place_claim.since) <> (excluded.recorded, excluded.since)""")
                .param("ids", ids).param("at", OffsetDateTime.MAX).update();
    }

    /** The recorded place, and since when. */
    record Stood(UUID site, Instant since) {}

    /**
     * Where it stands now, as kept; {@code quiet} when nobody has seen it since, nor any other place claims it: then
     * there is nothing to derive but from a movement of that very moment.
     */
    record Now(@Nullable Stood stood, boolean quiet) {

        private boolean answers(Instant at) {
            return stood != null && !stood.since.isAfter(at);
        }
    }

    /** Held against a ledger, which locks no containers. */
    Now now(UUID container) {
        return jdbc.sql("""
                select p.site_id, p.since, not exists (
                    select from filed_sighting g where g.container_id = p.container_id and g.occurred_at >= p.since)
                  and not exists (select from place_claim k where k.container_id = p.container_id) as quiet
                from placement p where p.container_id = ? for update of p""").param(container)
                .query((row, number) -> new Now(new Stood(row.getObject(1, UUID.class),
                        row.getObject(2, OffsetDateTime.class).toInstant()), row.getBoolean(3)))
                .optional().orElseGet(() -> new Now(null, jdbc.sql(
                        "select not exists (select from filed_sighting where container_id = ?)").param(container)
                        .query(Boolean.class).single()));
    }

    Optional<Stood> at(UUID container, Instant at) {
        return at(now(container), container, at);
    }

    Optional<Stood> at(Now now, UUID container, Instant at) {
        return now.stood == null || now.answers(at)
                ? Optional.ofNullable(now.stood)
                : jdbc.sql(
                        "select p.to_site_id, p.occurred_at from unnest(:ids) as c (id) cross join lateral (" + PLACED
                                + ") p")
                        .param("ids", new UUID[]{container}).param("at", at.atOffset(ZoneOffset.UTC))
                        .query((row, number) -> new Stood(row.getObject(1, UUID.class),
                                row.getObject(2, OffsetDateTime.class).toInstant()))
                        .optional();
    }

    /** Which other places claimed it at that moment. */
    Set<UUID> claimedAt(Now now, UUID container, Instant at) {
        return now.stood == null || now.quiet && now.answers(at)
                ? Set.of()
                : jdbc.sql("select k.site_id " + BY_THEN).param("ids", new UUID[]{container})
                        .param("at", at.atOffset(ZoneOffset.UTC)).query(UUID.class).set();
    }

    /** What a movement that was just recorded makes of where it stood before. */
    Moving.Recorded moved(Now before, UUID movement, NewMovement told) {
        var stood = before.stood;
        var id = told.containerId();
        if (!before.quiet || stood != null && stood.since.equals(told.occurredAt())) {
            settle(List.of(id));
            return placed(movement, id);
        }
        if (stood != null && stood.since.isAfter(told.occurredAt())) {
            return new Moving.Recorded(movement, false, false);
        }
        jdbc.sql("""
                insert into placement (container_id, site_id, movement_id, since) values (?, ?, ?, ?)
                on conflict (container_id) do update
                  set site_id = excluded.site_id, movement_id = excluded.movement_id, since = excluded.since
                  where placement.since <= excluded.since""")
                .params(id, told.toSite(), movement, told.occurredAt().atOffset(ZoneOffset.UTC)).update();
        return new Moving.Recorded(movement, true, false);
    }

    private Moving.Recorded placed(UUID movement, UUID container) {
        return jdbc.sql("""
                select movement_id = :id as moved,
                  exists (select from place_claim k where k.container_id = p.container_id) as disputed
                from placement p where container_id = :container""").param("id", movement)
                .param("container", container).query((row, number) -> new Moving.Recorded(movement,
                        row.getBoolean("moved"), row.getBoolean("disputed")))
                .single();
    }

    /** What a sighting that was just recorded makes of it: nothing where it confirms what nobody doubted. */
    void seen(Now before, UUID container, UUID site, Instant at) {
        var stood = before.stood;
        if (stood != null && !(before.quiet && (stood.site.equals(site) || stood.since.isAfter(at)))) {
            settle(List.of(container));
        }
    }
}
