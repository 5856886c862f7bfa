package org.collarbook.compliance;

/**
 * What the statement of {@link KnownContainers} reads of the past: each table that it names stands here for those of its
 * rows that were recorded by {@code :known} and had happened by then. The container is the version of its chain that
 * then was the last.
 */
final class Then {

    private static final String ON_THE_DAY = " at time zone coalesce((select zone from site), 'UTC'))::date <= :day";

    /** Happened by the end of the day asked about, the day where it stood. */
    static final String BY_DAY = then("""
            select container_id, to_site_id as site_id from public.movement
            where container_id = :id and recorded_at <= :known and occurred_at < :after
            order by occurred_at desc, recorded_at desc, id desc limit 1""", "", "", "",
            "(l.occurred_at" + ON_THE_DAY);

    /**
     * Happened by the moment of a fill, which itself tells where that was. A mark that bears its month alone and takes
     * the container out of service in the very month of the fill, recorded later, may be of a later day; and the hold
     * that a fill has placed says nothing of the fill before.
     */
    static final String BY_FILL = then("""
            select container_id, site_id from (
              select cast(:id as uuid) as container_id, cast(:site as uuid) as site_id, 1 as rank
              where cast(:site as uuid) is not null
              union all (
              select container_id, to_site_id, 2 from public.movement
              where container_id = :id and recorded_at <= :known and occurred_at <= :moment
              order by occurred_at desc, recorded_at desc, id desc limit 1)) told
            order by rank limit 1""", """
            and not (performed_on is null and result <> 'PASSED' and recorded_at > :sites
                and month = date_trunc('month', cast(:day as date))::date)""",
            "and id <> :fill and coalesce(filled_at < :moment, filled_on < :day)", """
            and occurred_at <= :moment and starts_with(note, 'Fill ' || cast(:fill as text) || ':') is not true""",
            "l.occurred_at <= :moment");

    private Then() {}

    private static String then(String placement, String tests, String fills, String holds, String lifts) {
        return """
                with container as (
                  select version.* from (
                    select content::jsonb as content from public.journal
                    where container_id = :id and kind in ('REGISTERED', 'RECORDED_ANEW') and recorded_at <= :known
                    order by seq desc limit 1) entry,
                  lateral jsonb_populate_record(null::public.container, entry.content
                    || jsonb_build_object('id', :id::text, 'declared', (entry.content ->> 'declared')::jsonb)) version),
                placement as (
                  %s
                ),
                site as (
                  select site_id as id, code, name, zone, jurisdiction, customer_id from public.site_version
                  where site_id = (select site_id from placement)
                  -- the first, where the site was not known yet
                  order by recorded_at <= :sites desc,
                    case when recorded_at <= :sites then version else - version end desc limit 1),
                requalification as (
                  select * from public.requalification
                  where container_id = :id and recorded_at <= :known and coalesce(performed_on <= :day, true)
                  %s
                ),
                requalification_correction as (
                  select k.* from public.requalification_correction k
                  where k.corrects in (select id from public.requalification where container_id = :id)
                    and k.recorded_at <= :known),
                fill as (
                  select * from public.fill where container_id = :id and recorded_at <= :known and filled_on <= :day
                  %s
                ),
                emptying as (
                  select * from public.emptying
                  where container_id = :id and recorded_at <= :known and emptied_on <= :day),
                part as (
                  select * from public.part where container_id = :id and recorded_at <= :known and fitted_on <= :day),
                part_removal as (
                  select * from public.part_removal where part_id in (select id from part) and recorded_at <= :known
                    and removed_on <= :day),
                out_of_service as (
                  select * from public.out_of_service
                  where container_id = :id and recorded_at <= :known and since <= :day),
                return_to_service as (
                  select * from public.return_to_service where out_of_service_id in (select id from out_of_service)
                    and recorded_at <= :known and returned_on <= :day),
                hold as (
                  select * from public.hold where container_id = :id and recorded_at <= :known
                  %s
                ),
                lift_in_force as (
                  select l.* from public.hold_lift l
                  where l.hold_id in (select id from hold) and l.recorded_at <= :known and %s
                    and not exists (select from requalification_correction k where k.corrects = l.requalification_id))
                """.formatted(placement, tests, fills, holds, lifts);
    }
}
