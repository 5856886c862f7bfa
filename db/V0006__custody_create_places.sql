create table customer (
    id          uuid        primary key,
    code        text        not null check (length(code) between 1 and 40),
    name        text        not null check (length(name) between 1 and 200),
    version     int         not null default 0,
    created_at  timestamptz not null default now(),
    constraint customer_code unique (code)
);

create table site (
    id            uuid        primary key,
    code          text        not null check (length(code) between 1 and 40),
    name          text        not null check (length(name) between 1 and 200),
    kind          text        not null check (kind in ('CUSTOMER', 'DEPOT', 'VEHICLE', 'REQUALIFIER')),
    customer_id   uuid        references customer,
    address       text,
    latitude      double precision check (latitude between -90 and 90),
    longitude     double precision check (longitude between -180 and 180),
    zone          text        not null,
    jurisdiction  text        not null,
    version       int         not null default 0,
    created_at    timestamptz not null default now(),
    constraint site_code unique (code),
    constraint site_customer_kind check ((kind = 'CUSTOMER') = (customer_id is not null)),
    constraint site_coordinates check ((latitude is null) = (longitude is null))
);

create index site_customer on site (customer_id);

grant select, insert, update on customer, site to collarbook_app;
