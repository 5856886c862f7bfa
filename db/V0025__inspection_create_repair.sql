-- Repair, rebuilding and reheat treatment of 4-series cylinders, 49 CFR 180.211; kept for fifteen years at least,
-- 180.215. No sentence there moves the due month, so nothing here does. Facts, so never changed.
create table repair (
    id                 uuid        primary key,
    container_id       uuid        not null references container,
    performed_on       date        not null,
    kind               text        not null check (kind in ('REPAIR', 'REBUILD', 'REHEAT')),
    seams              text        check (seams in ('WELDED', 'BRAZED')),
    requalifier_id     uuid        not null references requalifier,
    requalifier_name   text        not null,
    rin                text        not null,
    approved_from      date        not null,
    approval_expires   date        not null,
    work               text        not null check (length(work) between 1 and 2000),
    marks_transferred  boolean     not null,
    certification      text        not null check (length(certification) between 1 and 1000),
    keep_until         date        not null check (keep_until >= (performed_on + interval '15 years')::date),
    recorded_at        timestamptz not null default now(),
    recorded_by        uuid        not null,
    constraint repair_of_brazed_seams check (kind <> 'REBUILD' or seams = 'WELDED')
);

create unique index repair_once on repair (container_id, performed_on, kind, rin, md5(work));

grant select, insert on repair to collarbook_app;
