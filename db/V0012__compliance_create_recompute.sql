-- How far the recompute after a rule change has come; one row a pass, so that it resumes where it stopped.
create table recompute (
    id              uuid        primary key,
    rule_book_id    smallint    not null references rule_book,
    as_of           date        not null,
    after_container uuid,
    done            bigint      not null default 0,
    changed         bigint      not null default 0,
    started_at      timestamptz not null default now(),
    finished_at     timestamptz,
    constraint recompute_once unique (rule_book_id, as_of)
);

grant select, insert, update on recompute to collarbook_app;
