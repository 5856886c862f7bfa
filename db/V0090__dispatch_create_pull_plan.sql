-- A plan of which visit pulls which cylinder: what was asked, how far its making is, and what came of it. It says what is
-- intended and is no fact about a container.
create table pull_plan (
    id              uuid        primary key,
    number          int         not null generated always as identity,
    requested_at    timestamptz not null,
    requested_by    uuid        not null,
    from_day        date        not null,
    months          int         not null check (months between 1 and 60),
    through_day     date        not null check (through_day >= from_day),
    -- the routes that load there; all routes where it is null
    depot_id        uuid        references site,
    shop_per_week   int         not null check (shop_per_week >= 0),
    -- single weeks in which it is another number: an object of week and number
    shop_weeks      jsonb       not null,
    status          text        not null default 'QUEUED'
        check (status in ('QUEUED', 'RUNNING', 'DONE', 'FAILED', 'CANCELLED')),
    stage           text        check (stage in ('READ', 'SOLVE', 'PROVE', 'WRITE')),
    cylinders_read  int         not null default 0,
    lines_written   int         not null default 0,
    -- who makes it loses it when the lease runs out; each taking up is another attempt, and only the latest may write
    attempt         int         not null default 0,
    lease_until     timestamptz,
    started_at      timestamptz,
    finished_at     timestamptz,
    failure_code    text,
    failure         text,
    summary         jsonb,
    weeks           jsonb,
    missing         jsonb,
    input_hash      text,
    result_hash     text,
    constraint pull_plan_number unique (number),
    constraint pull_plan_done check (status <> 'DONE' or (summary is not null and weeks is not null
        and missing is not null and input_hash is not null and result_hash is not null)),
    constraint pull_plan_running check (status <> 'RUNNING' or lease_until is not null)
);

create index pull_plan_to_make on pull_plan (number) where status in ('QUEUED', 'RUNNING');

grant select, insert, update on pull_plan to collarbook_app;
