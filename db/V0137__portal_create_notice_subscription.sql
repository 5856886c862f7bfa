-- Where a customer's own system is told of changes. It is no fact about a container and is ended, not removed, so that
-- what was told stays attributable until it is purged.
create table notice_subscription (
    id            uuid        primary key,
    customer_id   uuid        not null references customer,
    url           text        not null check (length(url) between 1 and 2000),
    kinds         text[]      not null check (cardinality(kinds) > 0
        and kinds <@ array ['DUE_SOON', 'HOLD', 'MOVED', 'CONDEMNED']),
    -- how long before its last day, or before its month, a due month is told
    lead          int         check (lead >= 0),
    lead_unit     text        check (lead_unit in ('DAYS', 'MONTHS')),
    -- PAUSED: written and kept, not sent. SWITCHED_OFF: the endpoint answered that it is gone; nothing is written.
    status        text        not null default 'ACTIVE' check (status in ('ACTIVE', 'PAUSED', 'SWITCHED_OFF', 'ENDED')),
    status_since  timestamptz not null,
    created_at    timestamptz not null,
    created_by    uuid        not null references api_key,
    constraint notice_subscription_lead check (('DUE_SOON' = any (kinds)) = (lead is not null)
        and (lead is null) = (lead_unit is null))
);

create index notice_subscription_customer on notice_subscription (customer_id) where status <> 'ENDED';

grant select, insert on notice_subscription to collarbook_app;
grant update (status, status_since) on notice_subscription to collarbook_app;

-- What notices are signed with. A signature needs the secret itself, so it is kept as it is and not as a hash. Two are
-- valid while one takes the place of the other.
create table notice_secret (
    subscription_id  uuid        not null references notice_subscription,
    secret           bytea       not null check (length(secret) between 24 and 64),
    created_at       timestamptz not null,
    valid_until      timestamptz,
    primary key (subscription_id, secret)
);

create unique index notice_secret_current on notice_secret (subscription_id) where valid_until is null;

grant select, insert, delete on notice_secret to collarbook_app;
grant update (valid_until) on notice_secret to collarbook_app;
