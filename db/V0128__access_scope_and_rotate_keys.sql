-- A portal's key may be confined to some of its customer's sites, and a key may be followed by another.
alter table api_key
    add column sites uuid[] constraint api_key_sites_are_a_portals check (
        sites is null or customer_id is not null and cardinality(sites) between 1 and 1000),
    add column replaced_by uuid references api_key,
    -- not valid: keys of before are kept as they are, and one of an unknown customer shows nothing
    add constraint api_key_customer foreign key (customer_id) references customer not valid;

grant update (expires_at, replaced_by) on api_key to collarbook_app;
