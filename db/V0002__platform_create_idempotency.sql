-- The answer given to a command, kept under the caller's Idempotency-Key so that a repeat gets the same answer.
create table idempotency (
    caller       uuid        not null,
    key          text        not null check (length(key) between 1 and 200),
    fingerprint  bytea       not null,
    status       int         not null,
    location     text,
    etag         text,
    body         text,
    answered_at  timestamptz not null default now(),
    primary key (caller, key)
);

grant select, insert on idempotency to collarbook_app;
