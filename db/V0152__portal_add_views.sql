-- What a portal's lists and deltas read besides.
create view portal.clock with (security_barrier) as
select container_id, decisive, standing, due, filled_in_time, changes_on, changes_to, site_id, customer_id, changed_by,
    changed_at
from public.requirement
where customer_id = (select portal.own_customer())
  and ((select portal.own_sites()) is null or site_id = any ((select portal.own_sites())::uuid[]));

create view portal.departure with (security_barrier) as
select container_id, gone_by from public.departure
where customer_id = (select portal.own_customer())
  and ((select portal.own_sites()) is null or site_id = any ((select portal.own_sites())::uuid[]));

create view portal.site_change with (security_barrier) as
select id, changed_by from public.site
where customer_id = (select portal.own_customer())
  and ((select portal.own_sites()) is null or id = any ((select portal.own_sites())::uuid[]));

-- how much was put in where another customer has it is that one's
create view portal.latest_fill with (security_barrier) as
select f.container_id, f.filled_on, f.filled_at, f.id,
    case when told.own then f.added_lb end as added_lb,
    case when told.own then f.gallons_added end as gallons_added,
    case when told.own then f.net_lb end as net_lb
from public.filed_fill f
cross join lateral (
    select not exists (select from public.site s where s.id = f.site_id and s.customer_id is not null
        and s.customer_id <> (select portal.own_customer())) as own) told
where exists (select from portal.container c where c.id = f.container_id);

-- what a gauge showed elsewhere is not this customer's to see
create view portal.reading with (security_barrier) as
select f.id, f.container_id, f.percent, f.gauged_at, f.gauged_on, f.source
from public.filed_reading f
where f.site_id in (
    select s.id from public.site s where s.customer_id = (select portal.own_customer())
      and ((select portal.own_sites()) is null or s.id = any ((select portal.own_sites())::uuid[])))
  and exists (select from portal.container c where c.id = f.container_id);

grant select on portal.clock, portal.departure, portal.site_change, portal.latest_fill, portal.reading
    to collarbook_portal;

-- the word, by the one function that derives it
create function portal.status_word(standing text, due date, filled_in_time boolean, changes_on date, changes_to text,
        as_of date) returns text
    language sql immutable parallel safe
return public.container_status(standing, due, filled_in_time, changes_on, changes_to, as_of);

grant execute on function public.container_status(text, date, boolean, date, text, date),
    portal.status_word(text, date, boolean, date, text, date) to collarbook_portal;
