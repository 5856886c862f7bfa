-- One row a container: what is stamped on it, parsed, beside what was read where the two differ.
-- Months are the first day of the month; null means unknown, never "no".
create table container (
    id                         uuid        primary key,
    kind                       text        not null check (kind in
        ('CYLINDER', 'CARGO_TANK', 'PORTABLE_TANK', 'STATIONARY_TANK')),
    mark_scheme                text        not null,
    specification              text        not null,
    maker                      text,
    serial                     text        not null check (length(serial) between 1 and 40),
    manufactured               date        check (extract(day from manufactured) = 1),
    water_capacity             text,
    water_capacity_lb          numeric(12, 3) check (water_capacity_lb > 0),
    tare_lb                    numeric(10, 3) check (tare_lb > 0),
    service_pressure_psig      int         check (service_pressure_psig between 1 and 20000),
    size                       text        not null,
    specification_as_stamped   text,
    serial_as_stamped          text,
    manufactured_as_stamped    text,
    water_capacity_as_stamped  text,
    tare_as_stamped            text,
    marks_legible              boolean,
    coated                     boolean,
    lined                      boolean,
    steel                      text        check (steel in ('NQT', 'QT')),
    installation               text        check (installation in ('ABOVEGROUND', 'UNDERGROUND')),
    use                        text        check (use in
        ('FUEL', 'FIRE_EXTINGUISHER', 'SCUBA', 'AIRCRAFT', 'INDUSTRIAL_TRUCK', 'HOT_AIR_BALLOON')),
    lading                     text,
    exclusive                  boolean,
    corrosion_free             boolean,
    -- true: the distributor's own; false: somebody else's, so 49 CFR 173.301(e) asks for consent to fill
    owned                      boolean,
    owner                      text,
    owner_consent              boolean,
    permit_number              text,
    permit_expires             date,
    permit_interval_years      int         check (permit_interval_years between 1 and 40),
    -- true: somebody has read the collar, so that no recorded requalification means none is stamped
    collar_read                boolean     not null default false,
    tag                        text        check (length(tag) between 1 and 60),
    -- the facts of this row that rest on a declaration, by column name
    declaration_id             uuid        references declaration,
    declared                   text[]      not null default '{}',
    version                    int         not null default 0,
    registered_at              timestamptz not null default now(),
    registered_by              uuid        not null,
    -- the serial first: look-ups by serial alone, and of whole batches by key, read this one index
    constraint container_natural_key unique nulls not distinct
        (serial, specification, mark_scheme, maker, manufactured),
    constraint container_tag unique (tag),
    constraint container_declared_has_declaration check (cardinality(declared) = 0 or declaration_id is not null)
);

grant select, insert, update on container to collarbook_app;

-- What a container's marks said before they were corrected; facts, so never changed.
create table mark_correction (
    id           uuid        primary key,
    container_id uuid        not null references container,
    field        text        not null,
    was          text,
    became       text,
    reason       text        not null check (length(reason) between 1 and 1000),
    recorded_at  timestamptz not null default now(),
    recorded_by  uuid        not null
);

create index mark_correction_container on mark_correction (container_id);

grant select, insert on mark_correction to collarbook_app;
