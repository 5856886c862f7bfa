-- Keys are kept as SHA-256 of 256 random bits: nothing to guess, so no slow hash is needed.
create table api_key (
    id           uuid        primary key,
    name         text        not null check (length(name) between 1 and 200),
    prefix       text        not null,
    hash         bytea       not null unique,
    roles        text[]      not null check (cardinality(roles) > 0 and roles <@ array
        ['filler', 'dispatcher', 'yard', 'clerk', 'portal', 'administrator']),
    customer_id  uuid,
    created_at   timestamptz not null default now(),
    created_by   uuid        references api_key,
    expires_at   timestamptz,
    revoked_at   timestamptz,
    last_used_at timestamptz,
    -- a portal key sees one customer, and only a portal key is confined to one
    constraint api_key_portal_has_customer check (('portal' = any (roles)) = (customer_id is not null)),
    constraint api_key_portal_is_alone check (not 'portal' = any (roles) or cardinality(roles) = 1)
);

grant select, insert on api_key to collarbook_app;
grant update (revoked_at, last_used_at) on api_key to collarbook_app;
