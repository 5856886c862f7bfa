-- The three big reads: a site's or a customer's containers by due month, and everything by due month.
create index requirement_site on requirement (site_id, due, container_id) include (standing, filled_in_time, requirement)
    where decisive;
create index requirement_customer on requirement (customer_id, container_id) include (site_id, due, standing, filled_in_time)
    where decisive;
create index requirement_month on requirement (due, container_id, requirement) include (standing, filled_in_time, site_id)
    where due is not null;
-- what stands out of service whatever the date
create index requirement_standing on requirement (standing, site_id) where decisive and standing <> 'DUE';
-- special permits, which run out by date alone
create index container_permit_expires on container (permit_expires) where permit_expires is not null;
