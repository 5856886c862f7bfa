-- A portable fire extinguisher that stands at a site. What is not known of it stays null; it is described once and only
-- its removal is added later, so a mistake is removed and recorded anew.
create table extinguisher (
    id            uuid        primary key,
    site_id       uuid        not null references site,
    label         text        not null check (length(label) between 1 and 40),
    type          text        check (type in ('SODA_ACID_STAINLESS_STEEL', 'WATER_CARTRIDGE', 'WATER_STORED_PRESSURE',
        'WETTING_AGENT', 'FOAM_STAINLESS_STEEL', 'AQUEOUS_FILM_FORMING_FOAM', 'LOADED_STREAM',
        'DRY_CHEMICAL_STAINLESS_STEEL', 'CARBON_DIOXIDE', 'DRY_CHEMICAL_STORED_PRESSURE', 'DRY_CHEMICAL_CARTRIDGE',
        'HALON_1211', 'HALON_1301', 'DRY_POWDER_CARTRIDGE', 'SOLDERED_OR_RIVETED_SHELL')),
    rating_bc     int         check (rating_bc > 0),
    manufactured  date        check (extract(day from manufactured) = 1),
    recorded_at   timestamptz not null default now(),
    recorded_by   uuid        not null,
    removed_at    timestamptz,
    removed_by    uuid,
    constraint extinguisher_removal check ((removed_at is null) = (removed_by is null))
);

-- a label is free again when what bore it is gone
create unique index extinguisher_label on extinguisher (site_id, label) where removed_at is null;
create index extinguisher_site on extinguisher (site_id, id);

grant select, insert, update (removed_at, removed_by) on extinguisher to collarbook_app;
