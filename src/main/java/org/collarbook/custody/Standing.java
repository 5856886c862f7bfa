package org.collarbook.custody;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

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

    Optional<Stood> at(UUID container, Instant at) {
        return jdbc.sql("select p.to_site_id, p.occurred_at from unnest(:ids) as c (id) cross join lateral (" + PLACED
                + ") p").param("ids", new UUID[]{container}).param("at", at.atOffset(ZoneOffset.UTC))
                .query((row, number) -> new Stood(row.getObject(1, UUID.class),
                        row.getObject(2, OffsetDateTime.class).toInstant()))
                .optional();
    }

    /** Which other places claimed it at that moment. */
    Set<UUID> claimedAt(UUID container, Instant at) {
        return jdbc.sql("select k.site_id " + BY_THEN).param("ids", new UUID[]{container})
                .param("at", at.atOffset(ZoneOffset.UTC)).query(UUID.class).set();
    }
}
