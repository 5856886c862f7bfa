-- Every rule book ever loaded, whole, so that an old answer can be replayed and explained.
create table rule_book (
    id              smallint    generated always as identity primary key,
    hash            text        not null,
    engine_version  text        not null,
    content         text        not null,
    loaded_at       timestamptz not null default now(),
    constraint rule_book_hash unique (hash, engine_version)
);

grant select, insert on rule_book to collarbook_app;

-- One clock of one container as last assessed. Only what does not go stale at midnight is kept: the outcome
-- and the due month. Site and customer stand here a second time so that the lists read one index each. All of it is
-- derived from other tables and can be made anew from them, so it references the container only: a check of each
-- reference for each of millions of rows would be paid for nothing, since no row it names can be deleted.
create table requirement (
    container_id    uuid        not null references container,
    requirement     text        not null,
    -- the one that decides the container's status: the worst outcome, then the earliest month
    decisive        boolean     not null,
    standing        text        not null check (standing in ('CONDEMNED', 'REJECTED', 'ON_HOLD', 'UNDETERMINED',
        'OTHER_AUTHORITY', 'DUE', 'NOT_REQUIRED')),
    due             date        check (extract(day from due) = 1),
    -- the latest fill was made before the requirement fell due and no emptying is recorded since
    filled_in_time  boolean     not null,
    rule            text,
    -- the reasons that do not depend on the date
    reasons         text[]      not null,
    site_id         uuid,
    customer_id     uuid,
    rule_book_id    smallint    not null,
    assessed_on     date        not null,
    primary key (container_id, requirement),
    constraint requirement_due check (standing <> 'DUE' or due is not null)
);

grant select, insert, update, delete on requirement to collarbook_app;
