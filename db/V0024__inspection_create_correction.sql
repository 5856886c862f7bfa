-- A record that was a mistake, and the one that takes its place; without one it is void. Each is corrected once: a
-- mistake in the correction is corrected by another entry of its own.
create table requalification_correction (
    id           uuid        primary key,
    corrects     uuid        not null references requalification,
    replaced_by  uuid        references requalification,
    reason       text        not null check (length(reason) between 1 and 1000),
    recorded_at  timestamptz not null default now(),
    recorded_by  uuid        not null,
    constraint requalification_correction_once unique (corrects),
    constraint requalification_correction_replaces unique (replaced_by),
    constraint requalification_correction_not_itself check (replaced_by <> corrects)
);

grant select, insert on requalification_correction to collarbook_app;
