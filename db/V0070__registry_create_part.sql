-- Valves, gauges and labels fitted to a container; facts, so never changed. One that was taken out has a removal.
create table part (
    id            uuid        primary key,
    container_id  uuid        not null references container,
    kind          text        not null check (kind in
        ('RELIEF_VALVE', 'SERVICE_VALVE', 'OVERFILL_PREVENTION_DEVICE', 'GAUGE', 'EXEMPTION_LABEL')),
    maker         text        check (length(maker) between 1 and 100),
    model         text        check (length(model) between 1 and 100),
    serial        text        check (length(serial) between 1 and 60),
    -- the month stamped on it, as its first day
    manufactured  date        check (extract(day from manufactured) = 1),
    fitted_on     date        not null,
    -- what a label says that lets a cylinder go without an overfilling prevention device
    labelled_for  text        check (labelled_for in ('HORIZONTAL', 'INDUSTRIAL_TRUCK', 'WELDING_AND_CUTTING')),
    recorded_at   timestamptz not null default now(),
    recorded_by   uuid        not null,
    -- a relief valve is replaced by its own age
    constraint part_relief_valve_dated check (kind <> 'RELIEF_VALVE' or manufactured is not null),
    constraint part_label check ((kind = 'EXEMPTION_LABEL') = (labelled_for is not null)),
    constraint part_made_before_fitted check (manufactured is null or manufactured <= fitted_on),
    constraint part_once unique nulls not distinct
        (container_id, kind, maker, model, serial, manufactured, fitted_on, labelled_for)
);

grant select, insert on part to collarbook_app;

create table part_removal (
    part_id      uuid        primary key references part,
    removed_on   date        not null,
    reason       text        not null check (length(reason) between 1 and 500),
    -- nothing belongs in its place: the opening is closed for good
    for_good     boolean     not null,
    recorded_at  timestamptz not null default now(),
    recorded_by  uuid        not null
);

grant select, insert on part_removal to collarbook_app;
