-- Facts that rules of several jurisdictions ask for; null is not known.
alter table container
    add column relief_valve         text check (relief_valve in ('INTERNAL', 'EXTERNAL')),
    -- a longer period granted to a group of cylinders; NONE: none stands, or it was lost
    add column extended_period      text check (extended_period in ('P15Y', 'COP31', 'SPECIAL_PROVISION_V', 'NONE')),
    -- the month that a written scheme of examination gives, as its first day
    add column scheme_due           date check (extract(day from scheme_due) = 1),
    add column out_of_service_since date;
