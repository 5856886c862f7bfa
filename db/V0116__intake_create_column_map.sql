-- How the files of somebody else's making are read, saved by name. A map that was dropped keeps its row, so that a
-- version never tells of two different maps.
create table column_map (
    name        text        primary key check (name ~ '^[A-Za-z0-9][A-Za-z0-9._-]{0,59}$'),
    content     jsonb       not null,
    version     int         not null default 0,
    changed_at  timestamptz not null,
    changed_by  uuid        not null,
    dropped     boolean     not null default false
);

grant select, insert, update on column_map to collarbook_app;

-- The map that a ledger is read by, as it was when the ledger was handed in.
alter table ledger_import
    add column column_map_name    text,
    add column column_map_version int,
    add column column_map         jsonb,
    add constraint ledger_import_column_map check ((column_map_name is null) = (column_map is null)
        and (column_map_name is null) = (column_map_version is null));
