-- What the gauge of a tank showed, in percent of its volume; facts, so never changed. It decides nothing: a gauge sticks,
-- and whether gas may be put in is asked of the scale, the fixed level gauge and the rules.
create table reading (
    id            uuid          primary key,
    container_id  uuid          not null references container,
    percent       numeric(5, 2) not null check (percent between 0 and 100),
    gauged_at     timestamptz   not null,
    -- the day where it stood
    gauged_on     date          not null,
    source        text          not null check (source in ('READ_BY_PERSON', 'TELEMETRY')),
    -- where it stood at that moment, as recorded when the reading came in
    site_id       uuid          references site,
    recorded_at   timestamptz   not null default now(),
    recorded_by   uuid          not null,
    -- telemetry is delivered more than once
    constraint reading_once unique (container_id, gauged_at, source)
);

grant select, insert on reading to collarbook_app;

create view filed_reading as
select f.id, f.container_id, f.percent, f.gauged_at, f.gauged_on, f.source, f.site_id, f.recorded_at, f.recorded_by
from reading f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.percent, f.gauged_at, f.gauged_on, f.source, f.site_id, f.recorded_at, f.recorded_by
from refiled x join reading f on f.id = x.fact_id
where x.kind = 'reading';

grant select on filed_reading to collarbook_app;
