-- Whose a site was when a fact there was recorded: a site that changes hands takes nothing along of what was told of it
-- before, and gives nothing away. So what a portal is told of a container hangs on the container's own facts alone, and
-- no change of another site changes it behind a delta's back. Of what was recorded before versions were kept, the first.
create or replace view portal.latest_fill with (security_barrier) as
select f.container_id, f.filled_on, f.filled_at, f.id,
    case when told.own then f.added_lb end as added_lb,
    case when told.own then f.gallons_added end as gallons_added,
    case when told.own then f.net_lb end as net_lb
from public.filed_fill f
left join lateral (
    select v.customer_id from public.site_version v where v.site_id = f.site_id
    order by v.recorded_at <= f.recorded_at desc,
        case when v.recorded_at <= f.recorded_at then v.version else -v.version end desc
    limit 1) site on true
cross join lateral (select coalesce(site.customer_id = (select portal.own_customer()), true) as own) told
where exists (select from portal.container c where c.id = f.container_id);

create or replace view portal.reading with (security_barrier) as
select f.id, f.container_id, f.percent, f.gauged_at, f.gauged_on, f.source
from public.filed_reading f
cross join lateral (
    select v.customer_id from public.site_version v where v.site_id = f.site_id
    order by v.recorded_at <= f.recorded_at desc,
        case when v.recorded_at <= f.recorded_at then v.version else -v.version end desc
    limit 1) site
where site.customer_id = (select portal.own_customer())
  and ((select portal.own_sites()) is null or f.site_id = any ((select portal.own_sites())::uuid[]))
  and exists (select from portal.container c where c.id = f.container_id);
