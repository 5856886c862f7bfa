-- A ledger handed in: first checked (nothing stored in the register), then committed by a second request.
create table ledger_import (
    id              uuid        primary key,
    file_name       text        not null,
    sha256          text        not null,
    bytes           bigint      not null,
    declaration_id  uuid        references declaration,
    -- the time zone declared for the sites that the ledger opens
    zone            text,
    state           text        not null check (state in ('CHECKED', 'COMMITTED')),
    rows_read       bigint      not null,
    rows_new        bigint      not null,
    rows_changed    bigint      not null,
    rows_unchanged  bigint      not null,
    rows_refused    bigint      not null,
    rule_book_hash  text        not null,
    created_at      timestamptz not null default now(),
    created_by      uuid        not null,
    committed_at    timestamptz,
    committed_by    uuid,
    version         int         not null default 0
);

grant select, insert, update on ledger_import to collarbook_app;

-- The file as it was handed in, in pieces.
create table ledger_import_file (
    import_id  uuid   not null references ledger_import,
    piece      int    not null,
    content    bytea  not null,
    primary key (import_id, piece)
);

grant select, insert on ledger_import_file to collarbook_app;

-- What became of each line, as runs of lines with one outcome.
create table ledger_import_outcome (
    import_id   uuid    not null references ledger_import,
    pass        text    not null check (pass in ('CHECK', 'COMMIT')),
    first_line  bigint  not null,
    last_line   bigint  not null check (last_line >= first_line),
    outcome     text    not null check (outcome in ('NEW', 'CHANGED', 'UNCHANGED', 'REFUSED')),
    primary key (import_id, pass, first_line)
);

-- Why a line was refused, or what it leaves open: column, code, what was found, what is accepted.
create table ledger_import_problem (
    import_id    uuid    not null references ledger_import,
    pass         text    not null check (pass in ('CHECK', 'COMMIT')),
    line         bigint  not null,
    number       int     not null,
    refuses      boolean not null,
    column_name  text    not null,
    code         text    not null,
    found        text,
    accepted     text    not null,
    primary key (import_id, pass, line, number)
);

grant select, insert on ledger_import_outcome, ledger_import_problem to collarbook_app;
