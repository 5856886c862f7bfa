-- What people were trained in, 49 CFR 172.704; facts, so never changed.
create table training (
    id           uuid        primary key,
    person       text        not null check (length(person) between 1 and 100),
    kind         text        not null check (kind in ('FILLING', 'GENERAL_AWARENESS', 'FUNCTION_SPECIFIC', 'SAFETY',
        'SECURITY_AWARENESS')),
    trained_on   date        not null,
    -- the last day on which it counts
    expires      date        not null check (expires > trained_on),
    provided_by  text        not null check (length(provided_by) between 1 and 200),
    materials    text        check (length(materials) between 1 and 500),
    certified_by text        not null check (length(certified_by) between 1 and 200),
    recorded_at  timestamptz not null default now(),
    recorded_by  uuid        not null,
    constraint training_once unique (person, kind, trained_on)
);

create index training_expires on training (expires, id);

grant select, insert on training to collarbook_app;
