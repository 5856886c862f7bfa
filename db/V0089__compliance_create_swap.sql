-- A container taken away at a site and another one left in its place, or one of the two; binds their movements. Facts,
-- so never changed.
create table swap (
    id               uuid        primary key,
    site_id          uuid        not null references site,
    vehicle_id       uuid        not null references site,
    out_movement_id  uuid        unique references movement,
    in_movement_id   uuid        unique references movement,
    -- the one left there must not have been; codes
    refused_for      text[]      not null default '{}',
    rule_book_id     smallint    not null references rule_book,
    occurred_at      timestamptz not null,
    recorded_at      timestamptz not null default now(),
    recorded_by      uuid        not null,
    constraint swap_of_something check (out_movement_id is not null or in_movement_id is not null),
    constraint swap_elsewhere check (site_id <> vehicle_id)
);

create index swap_site on swap (site_id, id);

grant select, insert on swap to collarbook_app;
