-- Tanks taken out of service and put back; facts, so never changed.
create table out_of_service (
    id            uuid        primary key,
    container_id  uuid        not null references container,
    since         date        not null,
    reason        text        not null check (length(reason) between 1 and 500),
    recorded_at   timestamptz not null default now(),
    recorded_by   uuid        not null,
    constraint out_of_service_once unique (container_id, since)
);

grant select, insert on out_of_service to collarbook_app;

create table return_to_service (
    out_of_service_id  uuid        primary key references out_of_service,
    returned_on        date        not null,
    note               text        check (length(note) between 1 and 500),
    recorded_at        timestamptz not null default now(),
    recorded_by        uuid        not null
);

grant select, insert on return_to_service to collarbook_app;
