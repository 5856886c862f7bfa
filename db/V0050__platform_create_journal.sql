-- The life of each container as a chain: every recorded fact, in the order in which it was recorded, bound by hash to
-- the one before it. The facts themselves stand in their own tables; an entry keeps what a fact said, so that a row
-- altered behind the application's back is found.
create table journal (
    container_id   uuid        not null,
    seq            bigint      not null check (seq > 0),
    kind           text        not null,
    -- the row of the fact
    subject_id     uuid        not null,
    occurred_at    timestamptz not null,
    recorded_at    timestamptz not null,
    recorded_by    uuid        not null,
    content        text        not null,
    previous_hash  bytea       not null check (length(previous_hash) = 32),
    hash           bytea       not null check (length(hash) = 32),
    primary key (container_id, seq)
);

grant select, insert on journal to collarbook_app;

-- The last entry of each chain, derived from it; locked while a chain grows.
create table journal_head (
    container_id  uuid    primary key,
    seq           bigint  not null,
    hash          bytea   not null
);

grant select, insert, update on journal_head to collarbook_app;
