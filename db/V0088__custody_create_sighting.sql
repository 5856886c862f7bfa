-- Somebody saw a container standing somewhere; no movement, and a fact, so never changed.
create table sighting (
    id            uuid        primary key,
    container_id  uuid        not null references container,
    site_id       uuid        not null references site,
    occurred_at   timestamptz not null,
    recorded_at   timestamptz not null default now(),
    recorded_by   uuid        not null
);

create index sighting_container on sighting (container_id, occurred_at);

grant select, insert on sighting to collarbook_app;

create view filed_sighting as
select f.id, f.container_id, f.site_id, f.occurred_at, f.recorded_at, f.recorded_by
from sighting f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.site_id, f.occurred_at, f.recorded_at, f.recorded_by
from refiled x join sighting f on f.id = x.fact_id
where x.kind = 'sighting';

grant select on filed_sighting to collarbook_app;

-- Each place that claims a container which several claim now, the recorded one among them. Derived from the movements and
-- the sightings, as the placement is.
create table place_claim (
    container_id  uuid         not null references container,
    site_id       uuid         not null,
    recorded      boolean      not null,
    since         timestamptz  not null,
    primary key (container_id, site_id)
);

create index place_claim_site on place_claim (site_id, container_id);

grant select, insert, update, delete on place_claim to collarbook_app;

-- with the jurisdiction of each
create view claimed_place as
select k.container_id, k.site_id, s.jurisdiction from place_claim k join site s on s.id = k.site_id;

grant select on claimed_place to collarbook_app;
