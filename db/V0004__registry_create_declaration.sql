-- A fact asserted for a group of containers by a named person on a date, where no stamp or ledger says it.
create table declaration (
    id                 uuid        primary key,
    declared_by        text        not null check (length(declared_by) between 1 and 200),
    declared_on        date        not null,
    statement          text        not null,
    jurisdiction       text,
    coated             boolean,
    lading             text,
    exclusive          boolean,
    corrosion_free     boolean,
    marks_legible      boolean,
    owned              boolean,
    owner_consent      boolean,
    rin_seen           boolean,
    -- how a bare month of the last test was tested; null leaves the method a missing fact
    bare_month_method  text,
    -- true: a blank history means the collar was read and bears no later mark
    blank_means_none   boolean,
    recorded_at        timestamptz not null default now(),
    recorded_by        uuid        not null
);

grant select, insert on declaration to collarbook_app;
