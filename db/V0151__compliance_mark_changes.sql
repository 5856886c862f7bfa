-- Which transaction last changed what may be answered of a container, so that a portal can ask what changed since. A
-- number or a time would not do: transactions end in another order than they began, and one that ends late would be
-- missed. What a snapshot of before could not see yet is exactly what changed since. The rows of before were seen by all.
alter table requirement
    add column changed_by xid8 not null default '0',
    -- no two changes within one second are told apart by it
    add column changed_at timestamptz;
alter table requirement alter column changed_by set default pg_current_xact_id();

create index requirement_changed on requirement (customer_id, changed_by) where decisive;

-- A site's name and zone are in the answer of all that stands there.
alter table site add column changed_by xid8 not null default '0';
alter table site alter column changed_by set default pg_current_xact_id();

create function note_site_changed() returns trigger language plpgsql as $$
begin
    new.changed_by := pg_current_xact_id();
    return new;
end
$$;

create trigger site_changed before update on site for each row execute function note_site_changed();

-- Where a container was and is no more, the latest time only, for as long as a portal may ask. Derived, as the rows are
-- that it tells of.
create table departure (
    customer_id   uuid        not null,
    container_id  uuid        not null,
    site_id       uuid        not null,
    gone_by       xid8        not null,
    gone_at       timestamptz not null,
    primary key (customer_id, container_id, site_id)
);

create index departure_gone on departure (customer_id, gone_by);
create index departure_old on departure (gone_at);

grant select, insert, update, delete on departure to collarbook_app;

create function note_departure() returns trigger language plpgsql as $$
begin
    insert into departure (customer_id, container_id, site_id, gone_by, gone_at)
    values (old.customer_id, old.container_id, old.site_id, pg_current_xact_id(), clock_timestamp())
    on conflict (customer_id, container_id, site_id) do update set gone_by = excluded.gone_by,
        gone_at = excluded.gone_at;
    return null;
end
$$;

create trigger requirement_moved after update on requirement for each row
    when (old.decisive and old.customer_id is not null
        and (old.site_id, old.customer_id) is distinct from (new.site_id, new.customer_id))
    execute function note_departure();

create trigger requirement_gone after delete on requirement for each row
    when (old.decisive and old.customer_id is not null)
    execute function note_departure();
