-- A rack is changed as a whole against the version that was read; a vehicle without a row here has version 0.
create table rack_version (
    vehicle_id  uuid primary key references site,
    version     int  not null
);

grant select, insert, update on rack_version to collarbook_app;
