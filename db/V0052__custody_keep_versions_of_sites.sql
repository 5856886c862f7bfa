-- A site changes in place; an answer of a past moment rests on the site as it then was. Facts, so never changed.
create table site_version (
    site_id       uuid        not null references site,
    version       int         not null,
    code          text        not null,
    name          text        not null,
    customer_id   uuid,
    zone          text        not null,
    jurisdiction  text        not null,
    recorded_at   timestamptz not null default now(),
    primary key (site_id, version)
);

grant select, insert on site_version to collarbook_app;

-- of what was changed before, only the outcome is known
insert into site_version (site_id, version, code, name, customer_id, zone, jurisdiction, recorded_at)
select id, version, code, name, customer_id, zone, jurisdiction, created_at from site;
