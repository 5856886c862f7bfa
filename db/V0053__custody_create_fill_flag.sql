-- What became known of a fill after it was recorded: why it was not allowed, or, with no reasons, that it was after all.
-- Facts, so never changed; the latest counts, and the fill itself stays as it is.
create table fill_flag (
    id            uuid        primary key,
    fill_id       uuid        not null references fill,
    container_id  uuid        not null references container,
    -- code, text and citation of each
    reasons       jsonb       not null check (jsonb_typeof(reasons) = 'array'),
    rule_book_id  smallint    not null references rule_book,
    recorded_at   timestamptz not null default now(),
    recorded_by   uuid        not null
);

create index fill_flag_fill on fill_flag (fill_id);
create index fill_flag_container on fill_flag (container_id);

grant select, insert on fill_flag to collarbook_app;
