-- A facility that requalifies or repairs, by the identification number that its approval gave it. The approval is
-- renewed, so it changes here; each record keeps the approval as it stood when it was recorded.
create table requalifier (
    id             uuid        primary key,
    rin            text        not null check (rin ~ '^[A-Z][0-9]{3}$'),
    name           text        not null check (length(name) between 1 and 200),
    approved_from  date        not null,
    -- the last day of the approval
    expires        date        not null,
    version        int         not null default 0,
    created_at     timestamptz not null default now(),
    created_by     uuid        not null,
    constraint requalifier_rin unique (rin),
    constraint requalifier_approval check (approved_from <= expires)
);

grant select, insert, update on requalifier to collarbook_app;
