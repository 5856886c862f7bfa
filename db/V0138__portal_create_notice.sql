-- One notice to one endpoint, its body as it is sent each time. Written in the transaction of the change that it tells.
create table notice (
    id               uuid        primary key,
    -- the order in which notices about one container are sent
    number           bigint      not null generated always as identity,
    subscription_id  uuid        not null references notice_subscription,
    -- of a test there is none
    container_id     uuid        references container,
    type             text        not null,
    body             text        not null,
    occurred_at      timestamptz not null,
    status           text        not null default 'PENDING' check (status in ('PENDING', 'DELIVERED', 'GIVEN_UP')),
    attempts         int         not null default 0,
    next_attempt_at  timestamptz not null,
    settled_at       timestamptz,
    constraint notice_number unique (number),
    constraint notice_settled check ((status = 'PENDING') = (settled_at is null))
);

create index notice_of_subscription on notice (subscription_id, number);
create index notice_pending on notice (subscription_id, number) include (next_attempt_at, container_id)
    where status = 'PENDING';
create index notice_pending_of_container on notice (subscription_id, container_id, number) where status = 'PENDING';
create index notice_by_time on notice (occurred_at);

grant select, insert, update, delete on notice to collarbook_app;

-- Each time that one was sent, or was tried to.
create table notice_attempt (
    notice_id        uuid        not null references notice on delete cascade,
    number           bigint      primary key generated always as identity,
    subscription_id  uuid        not null,
    attempted_at     timestamptz not null,
    took_ms          int         not null,
    outcome          text        not null check (outcome in ('DELIVERED', 'ANSWERED_OTHERWISE', 'GONE', 'TIMED_OUT',
        'NOT_REACHED', 'ADDRESS_REFUSED')),
    http_status      int,
    error            text
);

create index notice_attempt_of_subscription on notice_attempt (subscription_id, number);
create index notice_attempt_of_notice on notice_attempt (notice_id, number);

grant select, insert on notice_attempt to collarbook_app;

-- Whose turn it is to send to an endpoint: one service at a time, for as long as its lease. Each taking up has another
-- fence, and only the latest may write.
create table notice_turn (
    subscription_id  uuid        primary key references notice_subscription,
    lease_until      timestamptz not null default '-infinity',
    fence            bigint      not null default 0,
    -- in a row; the endpoint rests the longer the more there are
    failures         int         not null default 0,
    rests_until      timestamptz not null default '-infinity',
    last_turn        timestamptz not null default '-infinity'
);

grant select, insert, update on notice_turn to collarbook_app;
