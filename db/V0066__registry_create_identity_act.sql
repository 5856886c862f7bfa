-- Two records found to be one container (MERGE: from_id is absorbed by into_id), or one found to be two (SPLIT: facts of
-- from_id go to into_id, which was registered for them). Facts, so never changed. The number says which came later.
create table identity_act (
    id           uuid        primary key,
    number       bigint      not null generated always as identity unique,
    kind         text        not null check (kind in ('MERGE', 'SPLIT')),
    from_id      uuid        not null references container,
    into_id      uuid        not null references container,
    -- what the absorbed record said otherwise and was given up, by field
    set_aside    text[]      not null default '{}',
    -- somebody has seen that a fill that was refused before will be allowed, and for which reasons it was refused
    confirmed    text[]      not null default '{}',
    -- the split whose undoing has closed the second record by this merge
    undoes       uuid        references identity_act,
    reason       text        not null check (length(reason) between 1 and 1000),
    recorded_at  timestamptz not null,
    recorded_by  uuid        not null,
    constraint identity_act_of_two check (from_id <> into_id),
    constraint identity_act_undoes_split check (undoes is null or kind = 'MERGE')
);

create index identity_act_from on identity_act (from_id);
create index identity_act_into on identity_act (into_id);

-- The facts that an act has filed under another record than before.
create table identity_act_fact (
    act_id   uuid  not null references identity_act,
    fact_id  uuid  not null,
    kind     text  not null,
    from_id  uuid  not null references container,
    into_id  uuid  not null references container,
    primary key (act_id, fact_id)
);

create index identity_act_fact_of on identity_act_fact (fact_id);
create index identity_act_fact_into on identity_act_fact (into_id);

create table identity_act_undo (
    act_id       uuid        primary key references identity_act,
    confirmed    text[]      not null default '{}',
    reason       text        not null check (length(reason) between 1 and 1000),
    recorded_at  timestamptz not null,
    recorded_by  uuid        not null
);

grant select, insert on identity_act, identity_act_fact, identity_act_undo to collarbook_app;

-- Derived from the acts, as where each container stands is derived from the movements: the facts that count for another
-- record than the one they were recorded on, and the records that are closed, each with the one that counts.
create table refiled (
    fact_id       uuid  primary key,
    kind          text  not null,
    container_id  uuid  not null references container,
    recorded_on   uuid  not null references container
);

create index refiled_container on refiled (container_id, kind);

create table absorbed (
    container_id  uuid  primary key references container,
    into_id       uuid  not null references container,
    constraint absorbed_by_another check (container_id <> into_id)
);

create index absorbed_into on absorbed (into_id);

grant select, insert, update, delete on refiled, absorbed to collarbook_app;
