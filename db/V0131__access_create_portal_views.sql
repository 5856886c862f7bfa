-- What a portal sees, and all that its role may read: one customer's rows, of some of its sites where it is confined to
-- them, named by settings of the transaction. Nothing is named, nothing is seen. The names are those of the tables, so the
-- statement that judges a container reads them as it stands once "portal" is the search path.
--
-- Views with a security barrier, not policies on the tables: PostgreSQL refuses COPY into a table whose row security binds
-- the one who copies, and a ledger, a recompute and a batch are written by COPY. The barrier keeps conditions that might
-- leak from being asked of foreign rows, as policies do. The role has no right on any table.
create schema portal;

revoke usage on schema public from collarbook_portal;
grant usage on schema portal to collarbook_portal;

create function portal.own_customer() returns uuid stable language sql
    return nullif(current_setting('collarbook.customer', true), '')::uuid;

-- null is all of the customer's
create function portal.own_sites() returns uuid[] stable language sql
    return nullif(current_setting('collarbook.sites', true), '')::uuid[];

create view portal.customer with (security_barrier) as
select id, code, name from public.customer where id = (select portal.own_customer());

create view portal.site with (security_barrier) as
select id, code, name, zone, jurisdiction, customer_id from public.site
where customer_id = (select portal.own_customer())
  and ((select portal.own_sites()) is null or id = any ((select portal.own_sites())::uuid[]));

create view portal.placement with (security_barrier) as
select p.container_id, p.site_id from public.placement p join public.site s on s.id = p.site_id
where s.customer_id = (select portal.own_customer())
  and ((select portal.own_sites()) is null or s.id = any ((select portal.own_sites())::uuid[]));

create view portal.requirement with (security_barrier) as
select container_id, decisive, site_id, customer_id from public.requirement
where customer_id = (select portal.own_customer())
  and ((select portal.own_sites()) is null or site_id = any ((select portal.own_sites())::uuid[]));

create view portal.container with (security_barrier) as
select c.* from public.container c where exists (
    select from public.placement p join public.site s on s.id = p.site_id
    where p.container_id = c.id and s.customer_id = (select portal.own_customer())
      and ((select portal.own_sites()) is null or s.id = any ((select portal.own_sites())::uuid[])));

create view portal.absorbed with (security_barrier) as
select f.container_id, f.into_id from public.absorbed f
where exists (select from portal.container c where c.id = f.container_id);

-- where else it is claimed to be is told by its jurisdiction only: the other place may be another customer's
create view portal.claimed_place with (security_barrier) as
select f.container_id, f.jurisdiction from public.claimed_place f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.declaration with (security_barrier) as
select d.id, d.declared_by, d.declared_on, d.jurisdiction from public.declaration d
where d.id in (select c.declaration_id from portal.container c
    union all select unnest(c.declared_in) from portal.container c);

create view portal.identity_act with (security_barrier) as
select f.from_id, f.into_id from public.identity_act f
where exists (select from portal.container c where c.id = f.from_id)
   or exists (select from portal.container c where c.id = f.into_id);

create view portal.fill with (security_barrier) as
select f.id, f.container_id, f.filled_on, f.filled_at from public.fill f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.filed_fill with (security_barrier) as
select f.id, f.container_id, f.filled_on, f.filled_at from public.filed_fill f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.emptying with (security_barrier) as
select f.id, f.container_id, f.emptied_on, f.emptied_at from public.emptying f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.filed_emptying with (security_barrier) as
select f.id, f.container_id, f.emptied_on, f.emptied_at from public.filed_emptying f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.requalification with (security_barrier) as
select f.id, f.container_id, f.month, f.method, f.star, f.plus, f.rin, f.rin_seen, f.result, f.performed_on from public.requalification f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.filed_requalification with (security_barrier) as
select f.id, f.container_id, f.month, f.method, f.star, f.plus, f.rin, f.rin_seen, f.result, f.performed_on from public.filed_requalification f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.hold with (security_barrier) as
select f.id, f.container_id, f.reason, f.occurred_at from public.hold f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.filed_hold with (security_barrier) as
select f.id, f.container_id, f.reason, f.occurred_at from public.filed_hold f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.part with (security_barrier) as
select f.id, f.container_id, f.kind, f.manufactured, f.fitted_on, f.labelled_for from public.part f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.filed_part with (security_barrier) as
select f.id, f.container_id, f.kind, f.manufactured, f.fitted_on, f.labelled_for from public.filed_part f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.out_of_service with (security_barrier) as
select f.id, f.container_id, f.since, f.reason from public.out_of_service f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.filed_out_of_service with (security_barrier) as
select f.id, f.container_id, f.since, f.reason from public.filed_out_of_service f
where exists (select from portal.container c where c.id = f.container_id);

create view portal.requalification_correction with (security_barrier) as
select f.corrects from public.requalification_correction f
where exists (select from portal.requalification x where x.id = f.corrects)
   or exists (select from portal.filed_requalification x where x.id = f.corrects);

create view portal.hold_lift with (security_barrier) as
select f.hold_id, f.requalification_id from public.hold_lift f
where exists (select from portal.hold x where x.id = f.hold_id)
   or exists (select from portal.filed_hold x where x.id = f.hold_id);

create view portal.lift_in_force with (security_barrier) as
select f.hold_id from public.lift_in_force f
where exists (select from portal.hold x where x.id = f.hold_id)
   or exists (select from portal.filed_hold x where x.id = f.hold_id);

create view portal.part_removal with (security_barrier) as
select f.part_id, f.removed_on, f.for_good from public.part_removal f
where exists (select from portal.part x where x.id = f.part_id)
   or exists (select from portal.filed_part x where x.id = f.part_id);

create view portal.return_to_service with (security_barrier) as
select f.out_of_service_id, f.returned_on from public.return_to_service f
where exists (select from portal.out_of_service x where x.id = f.out_of_service_id)
   or exists (select from portal.filed_out_of_service x where x.id = f.out_of_service_id);

grant select on all tables in schema portal to collarbook_portal;
