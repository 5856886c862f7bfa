-- Each pass over a ledger is a job: its check, and every commit that was asked for. What is told of an import is told of
-- its passes.
create table ledger_pass (
    id              uuid        primary key,
    number          int         not null generated always as identity,
    import_id       uuid        not null references ledger_import,
    purpose         text        not null check (purpose in ('CHECK', 'COMMIT')),
    -- what a commit does about rows that are not taken: SKIP loads the others in pieces, ABORT all or nothing
    on_refused      text        check (on_refused in ('SKIP', 'ABORT')),
    requested_at    timestamptz not null,
    requested_by    uuid        not null,
    status          text        not null default 'QUEUED'
        check (status in ('QUEUED', 'RUNNING', 'DONE', 'FAILED', 'CANCELLED')),
    attempt         int         not null default 0,
    lease_until     timestamptz,
    started_at      timestamptz,
    finished_at     timestamptz,
    failure_code    text,
    failure         text,
    -- how far it is, told while it goes on
    rows_passed     bigint      not null default 0,
    bytes_passed    bigint      not null default 0,
    -- what is stored of it, changed in the transaction that stores it: the rows that start on or before this line
    through_line    bigint,
    rows_read       bigint      not null default 0,
    rows_new        bigint      not null default 0,
    rows_changed    bigint      not null default 0,
    rows_unchanged  bigint      not null default 0,
    rows_refused    bigint      not null default 0,
    rows_ambiguous  bigint      not null default 0,
    constraint ledger_pass_number unique (number),
    constraint ledger_pass_on_refused check ((purpose = 'COMMIT') = (on_refused is not null)),
    constraint ledger_pass_running check (status <> 'RUNNING' or lease_until is not null),
    constraint ledger_pass_accounts_for_every_row check (rows_read
        = rows_new + rows_changed + rows_unchanged + rows_refused + rows_ambiguous)
);

create index ledger_pass_of_import on ledger_pass (import_id, number);
create index ledger_pass_to_do on ledger_pass (number) where status in ('QUEUED', 'RUNNING');

grant select, insert, update on ledger_pass to collarbook_app;

-- Of imports from before, the counts kept were those of the latest pass: they stand for the check of a committed one too.
insert into ledger_pass (id, import_id, purpose, requested_at, requested_by, status, attempt, started_at, finished_at,
    rows_passed, bytes_passed, rows_read, rows_new, rows_changed, rows_unchanged, rows_refused)
select gen_random_uuid(), id, 'CHECK', created_at, created_by, 'DONE', 1, created_at, created_at, rows_read, bytes,
    rows_read, rows_new, rows_changed, rows_unchanged, rows_refused
from ledger_import order by created_at;

insert into ledger_pass (id, import_id, purpose, on_refused, requested_at, requested_by, status, attempt, started_at,
    finished_at, rows_passed, bytes_passed, rows_read, rows_new, rows_changed, rows_unchanged, rows_refused)
select gen_random_uuid(), id, 'COMMIT', 'SKIP', committed_at, committed_by, 'DONE', 1, committed_at, committed_at,
    rows_read, bytes, rows_read, rows_new, rows_changed, rows_unchanged, rows_refused
from ledger_import where state = 'COMMITTED' order by committed_at;
