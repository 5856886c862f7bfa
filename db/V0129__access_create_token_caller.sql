-- Who came with a token of the issuer and not with a key. The id is derived from issuer and subject, so the same person
-- has the same id on every instance; it stands wherever a key's id may (created_by, recorded_by and their like).
create table token_caller (
    id            uuid        primary key,
    issuer        text        not null,
    subject       text        not null,
    first_seen_at timestamptz not null,
    constraint token_caller_subject unique (issuer, subject)
);

grant select, insert on token_caller to collarbook_app;

alter table api_key drop constraint api_key_created_by_fkey;
alter table calendar_feed drop constraint calendar_feed_created_by_fkey;

-- The name behind an id that stands in created_by or recorded_by.
create view known_caller as
    select id, 'KEY' as kind, name from api_key
    union all
    select id, 'TOKEN', subject from token_caller;

grant select on known_caller to collarbook_app;
