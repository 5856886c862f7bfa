-- Read by the statement that judges a container (see more_recorded).
create view portal.more_recorded with (security_barrier) as
select f.container_id from public.more_recorded f
where exists (select from portal.container c where c.id = f.container_id);

grant select on portal.more_recorded to collarbook_portal;
