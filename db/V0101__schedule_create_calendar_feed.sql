-- A calendar that somebody subscribes to, opened by a token of its own that is kept hashed. The filter is what was asked,
-- as JSON, with ids for codes.
create table calendar_feed (
    id          uuid        primary key,
    name        text        not null check (length(name) between 1 and 200),
    token_hash  bytea       not null check (length(token_hash) = 32),
    filter      text        not null,
    created_at  timestamptz not null,
    created_by  uuid        not null references api_key,
    revoked_at  timestamptz,
    constraint calendar_feed_token unique (token_hash)
);

grant select, insert on calendar_feed to collarbook_app;
grant update (revoked_at) on calendar_feed to collarbook_app;
