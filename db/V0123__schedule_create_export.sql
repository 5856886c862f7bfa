-- The schedule as files: what was asked, how far their making is, and what came of it. What is asked is kept as JSON, the
-- filter with ids for codes.
create table schedule_export (
    id                uuid        primary key,
    number            int         not null generated always as identity,
    requested_at      timestamptz not null,
    requested_by      uuid        not null,
    asked             jsonb       not null,
    -- the earlier export that it tells the changes since
    since_id          uuid        references schedule_export,
    status            text        not null default 'QUEUED'
        check (status in ('QUEUED', 'RUNNING', 'DONE', 'FAILED', 'CANCELLED')),
    rows_written      bigint      not null default 0,
    containers_replayed bigint    not null default 0,
    -- who makes it loses it when the lease runs out; each taking up is another attempt, and only the latest may end it
    attempt           int         not null default 0,
    lease_until       timestamptz,
    started_at        timestamptz,
    finished_at       timestamptz,
    failure_code      text,
    failure           text,
    snapshot_at       timestamptz,
    manifest          jsonb,
    -- when its files, and later the keys of its rows, are deleted
    expires_at        timestamptz,
    keys_expire_at    timestamptz,
    files_deleted_at  timestamptz,
    keys_deleted_at   timestamptz,
    constraint schedule_export_number unique (number),
    constraint schedule_export_done check (status <> 'DONE' or (snapshot_at is not null and manifest is not null
        and expires_at is not null and keys_expire_at is not null)),
    constraint schedule_export_running check (status <> 'RUNNING' or lease_until is not null)
);

create index schedule_export_to_make on schedule_export (number) where status in ('QUEUED', 'RUNNING');
create index schedule_export_kept on schedule_export (id) where keys_deleted_at is null;

grant select, insert, update on schedule_export to collarbook_app;

-- A file in pieces, so that neither end of the service holds it whole. Each attempt has its own: one that was lost may
-- still be writing.
create table schedule_export_piece (
    export_id  uuid  not null references schedule_export,
    attempt    int   not null,
    name       text  not null,
    piece      int   not null,
    content    bytea not null,
    primary key (export_id, attempt, name, piece)
);

grant select, insert, delete on schedule_export_piece to collarbook_app;

-- Which rows an export had, and a hash of each, so that a later one can tell what is new, changed and gone. By the
-- export's number, and the hash as the sixteen octets that it is: there are as many as rows of all exports.
create table schedule_export_key (
    export_number  int   not null,
    attempt        int   not null,
    container_id   uuid  not null,
    requirement    text  not null,
    jurisdiction   text  not null,
    row_hash       uuid  not null,
    primary key (export_number, attempt, container_id, requirement, jurisdiction)
);

grant select, insert, delete on schedule_export_key to collarbook_app;
