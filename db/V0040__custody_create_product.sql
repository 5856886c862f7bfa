-- What is filled in, with the specific gravity that a named person declares for it (from the supplier's certificate,
-- say). A fill keeps the gravity it was judged with, so a later change here rewrites nothing.
create table product (
    id                uuid          primary key,
    code              text          not null check (length(code) between 1 and 40),
    lading            text          not null check (length(lading) between 2 and 64),
    -- of the liquid at 60 °F, against water at 60 °F
    specific_gravity  numeric(5, 4) not null check (specific_gravity > 0 and specific_gravity < 1),
    declared_by       text          not null check (length(declared_by) between 1 and 200),
    declared_on       date          not null,
    version           int           not null default 0,
    created_at        timestamptz   not null default now(),
    constraint product_code unique (code)
);

grant select, insert, update on product to collarbook_app;
