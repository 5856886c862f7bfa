-- What was corrected away may be recorded once more, so each row says how often the same had been recorded before it.
alter table repair add column recorded_before int not null default 0 check (recorded_before >= 0);

drop index repair_once;
create unique index repair_once on repair (container_id, performed_on, kind, rin, md5(work), recorded_before);

-- A repair that was recorded by mistake, and the one that takes its place; without one it is void. Both are kept.
create table repair_correction (
    id           uuid        primary key,
    corrects     uuid        not null references repair,
    replaced_by  uuid        references repair,
    reason       text        not null check (length(reason) between 1 and 1000),
    recorded_at  timestamptz not null default now(),
    recorded_by  uuid        not null,
    constraint repair_correction_once unique (corrects),
    constraint repair_correction_replaces unique (replaced_by),
    constraint repair_correction_not_itself check (replaced_by <> corrects)
);

grant select, insert on repair_correction to collarbook_app;
