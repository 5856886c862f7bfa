-- What was done to an extinguisher, by whom; facts, so never changed.
create table extinguisher_record (
    id               uuid        primary key,
    extinguisher_id  uuid        not null references extinguisher,
    month            date        not null check (extract(day from month) = 1),
    method           text        not null check (method in ('EXTINGUISHER_INSPECTED', 'EXTINGUISHER_MAINTAINED',
        'EXTINGUISHER_EMPTIED', 'EXTINGUISHER_PRESSURE_TESTED')),
    done_by          text        not null check (length(done_by) between 1 and 200),
    recorded_at      timestamptz not null default now(),
    recorded_by      uuid        not null,
    constraint extinguisher_record_once unique (extinguisher_id, month, method)
);

grant select, insert on extinguisher_record to collarbook_app;
