-- Who filled, as named there, and whether it leaked afterwards.
alter table fill
    add column filled_by   text check (length(filled_by) between 1 and 100),
    add column leak_found  boolean,
    add constraint fill_leak_checked check (leak_found is null or leak_checked);
