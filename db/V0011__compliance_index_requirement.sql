-- The big reads, each one range of one index in the order it is asked for: what falls due at a site, at a customer,
-- everywhere; and a customer's containers for the portal.
create index requirement_site on requirement (site_id, due, container_id, requirement)
    include (standing, filled_in_time, decisive);
create index requirement_customer on requirement (customer_id, due, container_id, requirement)
    include (standing, filled_in_time);
create index requirement_month on requirement (due, container_id, requirement)
    include (standing, filled_in_time, site_id) where due is not null;
create index requirement_portal on requirement (customer_id, container_id) where decisive;
-- what stands out of service whatever the date
create index requirement_standing on requirement (standing, site_id) where decisive and standing <> 'DUE';
-- special permits, which run out by date alone
create index container_permit_expires on container (permit_expires) where permit_expires is not null;
