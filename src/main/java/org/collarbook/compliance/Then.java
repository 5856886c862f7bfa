package org.collarbook.compliance;

/**
 * What the statement of {@link KnownContainers} reads of the past: each table or view that it names stands here for those
 * of its rows that were recorded by {@code :known}, then counted for the container and had happened by then. The
 * container is the version of its chain that then was the last; a record that was closed then answers for nothing.
 */
final class Then {

    /** An act {@code a} as of then. */
    private static final String IN_FORCE = """
            a.recorded_at <= :known and not exists (select from public.identity_act_undo u
                where u.act_id = a.id and u.recorded_at <= :known)""";

    /** A fact {@code f} was recorded by then, and then counted for the container. */
    private static final String COUNTED = """
            f.recorded_at <= :known
              and (f.container_id = :id or f.id in (select fact_id from public.identity_act_fact where into_id = :id))
              and coalesce((select m.into_id from public.identity_act_fact m
                  join public.identity_act a on a.id = m.act_id
                  where m.fact_id = f.id and %s order by a.number desc limit 1), f.container_id) = :id"""
            .formatted(IN_FORCE);

    private static final String WHERE_IT_STOOD = """
            with container as (
              select version.* from (
                select content::jsonb as content from public.journal
                where container_id = :id and kind in ('REGISTERED', 'RECORDED_ANEW') and recorded_at <= :known
                  and not exists (
                    select from public.identity_act a where a.kind = 'MERGE' and a.from_id = :id and %s)
                order by seq desc limit 1) entry,
              lateral jsonb_populate_record(null::public.container, entry.content
                || jsonb_build_object('id', :id::text, 'declared', (entry.content ->> 'declared')::jsonb,
                  'declared_in', (entry.content ->> 'declared_in')::jsonb)) version),
            absorbed as (
              select cast(null as uuid) as container_id, cast(null as uuid) as into_id where false),
            moved as (
              select f.* from public.movement f where %s and f.occurred_at %%1$s),
            -- of several at one moment the first recorded, unless another one starts where it led
            deciding as (
              select f.* from moved f where not exists (select from moved n where n.occurred_at = f.occurred_at
                and n.from_site_id = f.to_site_id and (n.recorded_at, n.id) > (f.recorded_at, f.id))),
            last_moved as (
              select to_site_id as site_id, occurred_at from deciding
              order by occurred_at desc, recorded_at, id limit 1),
            placement as (
              %%2$s
            ),
            filed_sighting as (
              select f.site_id, f.occurred_at from public.sighting f where %s and f.occurred_at %%1$s),
            claimed_place as (
              select cast(:id as uuid) as container_id, k.site_id, (
                select v.jurisdiction from public.site_version v where v.site_id = k.site_id
                order by v.recorded_at <= :sites desc,
                  case when v.recorded_at <= :sites then v.version else - v.version end desc limit 1) as jurisdiction
              from last_moved p cross join lateral (
                select f.to_site_id as site_id, f.occurred_at from deciding f where f.occurred_at = p.occurred_at
                union all
                select g.site_id, g.occurred_at from filed_sighting g where g.occurred_at >= p.occurred_at
                  and not exists (select from moved f where f.occurred_at = g.occurred_at
                    and f.from_site_id = g.site_id)) k
              where k.site_id <> p.site_id and not exists (
                select from filed_sighting s where s.site_id = p.site_id and s.occurred_at > k.occurred_at)),
            site as (
              select site_id as id, code, name, zone, jurisdiction, customer_id from public.site_version
              where site_id = (select site_id from placement)
              -- the first, where the site was not known yet
              order by recorded_at <= :sites desc,
                case when recorded_at <= :sites then version else - version end desc limit 1),
            """.formatted(IN_FORCE, COUNTED, COUNTED);

    private static final String WHAT_WAS_DONE = """
            filed_requalification as (
              select f.id, cast(:id as uuid) as container_id, f.month, f.method, f.star, f.plus, f.rin, f.rin_seen,
                f.result, f.performed_on
              from public.requalification f where %1$s and coalesce(f.performed_on <= :day, true)
              %2$s
            ),
            requalification_correction as (
              select k.* from public.requalification_correction k where k.recorded_at <= :known
                and k.corrects in (select id from filed_requalification)),
            filed_fill as (
              select f.id, cast(:id as uuid) as container_id, f.filled_on, f.filled_at
              from public.fill f where %1$s and f.filled_on <= :day
              %3$s
            ),
            filed_emptying as (
              select f.id, cast(:id as uuid) as container_id, f.emptied_on, f.emptied_at
              from public.emptying f where %1$s and f.emptied_on <= :day),
            filed_part as (
              select f.id, cast(:id as uuid) as container_id, f.kind, f.manufactured, f.fitted_on, f.labelled_for
              from public.part f where %1$s and f.fitted_on <= :day),
            part_removal as (
              select * from public.part_removal where part_id in (select id from filed_part)
                and recorded_at <= :known and removed_on <= :day),
            filed_out_of_service as (
              select f.id, cast(:id as uuid) as container_id, f.since, f.reason
              from public.out_of_service f where %1$s and f.since <= :day),
            return_to_service as (
              select * from public.return_to_service
              where out_of_service_id in (select id from filed_out_of_service)
                and recorded_at <= :known and returned_on <= :day),
            """;

    private static final String WHAT_HELD_IT = """
            filed_hold as (
              select f.id, cast(:id as uuid) as container_id, f.reason, f.occurred_at
              from public.hold f where %1$s
              %2$s
            ),
            lift_in_force as (
              select l.* from public.hold_lift l
              where l.hold_id in (select id from filed_hold) and l.recorded_at <= :known and %3$s
                and (l.requalification_id is null
                  or l.requalification_id in (select id from public.requalification f where %1$s))
                and not exists (select from public.requalification_correction k
                  where k.corrects = l.requalification_id and k.recorded_at <= :known)
                -- it was lifted while it counted for another record
                and not exists (select from public.identity_act_fact f join public.identity_act a on a.id = f.act_id
                  join public.identity_act_undo u on u.act_id = f.act_id and u.recorded_at <= :known
                  where f.fact_id = l.hold_id and l.recorded_at between a.recorded_at and u.recorded_at))
            """;

    private static final String ON_THE_DAY = " at time zone coalesce((select zone from site), 'UTC'))::date <= :day";

    /** Happened by the end of the day asked about, the day where it stood. */
    static final String BY_DAY = then("< :after",
            "select cast(:id as uuid) as container_id, site_id from last_moved", "", "", "",
            "(l.occurred_at" + ON_THE_DAY);

    /**
     * Happened by the moment of a fill, which itself tells where that was. A mark that bears its month alone and takes
     * the container out of service in the very month of the fill, recorded later, may be of a later day; and the hold
     * that a fill has placed says nothing of the fill before.
     */
    static final String BY_FILL = then("<= :moment", """
            select container_id, site_id from (
              select cast(:id as uuid) as container_id, cast(:site as uuid) as site_id, 1 as rank
              where cast(:site as uuid) is not null
              union all
              select cast(:id as uuid), site_id, 2 from last_moved) told
            order by rank limit 1""", """
            and not (f.performed_on is null and f.result <> 'PASSED' and f.recorded_at > :sites
                and f.month = date_trunc('month', cast(:day as date))::date)""",
            "and f.id <> :fill and coalesce(f.filled_at < :moment, f.filled_on < :day)", """
            and f.occurred_at <= :moment
            and starts_with(f.note, 'Fill ' || cast(:fill as text) || ':') is not true""",
            "l.occurred_at <= :moment");

    private Then() {}

    private static String then(String happened, String placement, String tests, String fills, String holds,
            String lifts) {
        return WHERE_IT_STOOD.formatted(happened, placement) + WHAT_WAS_DONE.formatted(COUNTED, tests, fills)
                + WHAT_HELD_IT.formatted(COUNTED, holds, lifts);
    }
}
