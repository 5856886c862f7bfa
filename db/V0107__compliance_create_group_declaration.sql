-- A declaration for a group of registered containers. The group is fixed when it is recorded: what moves or is registered
-- later neither leaves it nor comes into it.
create table group_declaration (
    declaration_id  uuid  primary key references declaration,
    -- the conditions as they were told, as JSON
    told            text  not null
);

grant select, insert on group_declaration to collarbook_app;

-- No key of container: a check of that would wait for whoever changes the marks of one, with all others in hand.
-- Containers are never deleted.
create table declaration_member (
    declaration_id  uuid  not null references group_declaration,
    container_id    uuid  not null,
    primary key (declaration_id, container_id)
);

grant select, insert on declaration_member to collarbook_app;

-- What it did to each: the facts that it filled, that were known the same, and of which the register said otherwise. All
-- empty where the record had been merged into another by then.
create table declaration_outcome (
    declaration_id  uuid         not null,
    container_id    uuid         not null,
    filled          text[]       not null,
    known           text[]       not null,
    contradicting   text[]       not null,
    recorded_at     timestamptz  not null,
    primary key (declaration_id, container_id),
    foreign key (declaration_id, container_id) references declaration_member
);

create index declaration_outcome_contradicting on declaration_outcome (declaration_id, container_id)
    where contradicting <> '{}';

grant select, insert on declaration_outcome to collarbook_app;

-- It was a mistake: what rests on it is not known.
create table declaration_withdrawal (
    declaration_id  uuid         primary key references group_declaration,
    reason          text         not null check (length(reason) between 1 and 1000),
    recorded_at     timestamptz  not null,
    recorded_by     uuid         not null
);

grant select, insert on declaration_withdrawal to collarbook_app;

-- How far it has been carried out, and its withdrawal.
create table declaration_sweep (
    declaration_id  uuid         primary key references group_declaration,
    finished_at     timestamptz,
    undone_at       timestamptz
);

grant select, insert, update (finished_at, undone_at) on declaration_sweep to collarbook_app;
