-- A container found empty; facts, so never changed. A later fill ends what one of them says.
create table emptying (
    id            uuid        primary key,
    container_id  uuid        not null references container,
    emptied_at    timestamptz not null,
    -- the day where it stood
    emptied_on    date        not null,
    how           text        check (length(how) between 1 and 200),
    recorded_at   timestamptz not null default now(),
    recorded_by   uuid        not null,
    constraint emptying_once unique (container_id, emptied_at)
);

grant select, insert on emptying to collarbook_app;
