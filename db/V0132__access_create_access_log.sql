-- Every write that was asked for and every access that was refused, once it was answered. Who came without a valid key or
-- token has no id. The endpoint is the line of the table of doors, null where there is none; ids are what stood in its
-- places and what was made. Neither keys nor bodies are kept.
create table access_log (
    at           timestamptz  not null,
    number       bigint       primary key generated always as identity,
    request_id   uuid         not null unique,
    caller_id    uuid,
    caller       text,
    method       text         not null check (length(method) <= 20),
    endpoint     text,
    ids          text[]       not null check (cardinality(ids) <= 10),
    status       smallint     not null,
    denied       boolean      not null
);

create index access_log_caller on access_log (caller_id, number);
create index access_log_denied on access_log (number) where denied;

grant select, insert on access_log to collarbook_app;
