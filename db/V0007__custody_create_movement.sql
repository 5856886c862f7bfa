-- A container changing site; facts, so never changed.
create table movement (
    id            uuid        primary key,
    container_id  uuid        not null references container,
    from_site_id  uuid        references site,
    to_site_id    uuid        not null references site,
    occurred_at   timestamptz not null,
    recorded_at   timestamptz not null default now(),
    recorded_by   uuid        not null
);

create index movement_container on movement (container_id, occurred_at);

grant select, insert on movement to collarbook_app;

-- Where each container stands now: the last of its movements by the time they happened. Derived from them, so the
-- references are theirs and are not checked a second time.
create table placement (
    container_id  uuid        primary key references container,
    site_id       uuid        not null,
    movement_id   uuid        not null,
    since         timestamptz not null
);

create index placement_site on placement (site_id);

grant select, insert, update on placement to collarbook_app;

-- Gas put in; facts, so never changed. What is not known of an old fill stays null.
create table fill (
    id            uuid        primary key,
    container_id  uuid        not null references container,
    filled_on     date        not null,
    net_lb        numeric(10, 3) check (net_lb > 0),
    recorded_at   timestamptz not null default now(),
    recorded_by   uuid        not null,
    constraint fill_once unique nulls not distinct (container_id, filled_on, net_lb)
);

grant select, insert on fill to collarbook_app;
