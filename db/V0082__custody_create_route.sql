-- Which sites a vehicle calls at, in which order, and on which days: a recurrence rule (RFC 5545) from a first day on,
-- less the days skipped and the holidays, with the days added. Visits are computed from it and stored nowhere.
create table route (
    id           uuid        primary key,
    code         text        not null check (length(code) between 1 and 40),
    name         text        not null check (length(name) between 1 and 200),
    -- where it loads
    depot_id     uuid        not null references site,
    -- a site of the kind VEHICLE
    vehicle_id   uuid        references site,
    rule         text        not null check (length(rule) between 1 and 500),
    first_day    date        not null,
    on_holidays  boolean     not null,
    version      int         not null default 0,
    created_at   timestamptz not null default now(),
    constraint route_code unique (code)
);

create index route_depot on route (depot_id);

create table route_stop (
    route_id  uuid not null references route,
    position  int  not null check (position >= 1),
    site_id   uuid not null references site,
    primary key (route_id, position),
    constraint route_stop_once unique (route_id, site_id)
);

create index route_stop_site on route_stop (site_id);

create table route_exception (
    route_id  uuid not null references route,
    day       date not null,
    kind      text not null check (kind in ('SKIPPED', 'ADDED')),
    reason    text not null check (length(reason) between 1 and 200),
    primary key (route_id, day)
);

create table holiday (
    day   date primary key,
    name  text not null check (length(name) between 1 and 200)
);

-- How many cylinders of a size a vehicle carries; of a size without a row it is not known.
create table rack (
    vehicle_id  uuid not null references site,
    size        text not null check (length(size) between 1 and 60),
    places      int  not null check (places >= 0),
    primary key (vehicle_id, size)
);

-- none of these are facts about containers: they say what is intended, and change in place
grant select, insert, update on route to collarbook_app;
grant select, insert, update, delete on route_stop, route_exception, holiday, rack to collarbook_app;
