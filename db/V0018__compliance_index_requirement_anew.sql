-- The same big reads, with the jurisdiction in their order and what the status word needs beside it.
drop index requirement_site, requirement_customer, requirement_month, requirement_standing;
create index requirement_site on requirement (site_id, due, container_id, requirement, jurisdiction)
    include (standing, filled_in_time, changes_on, changes_to, decisive);
create index requirement_customer on requirement (customer_id, due, container_id, requirement, jurisdiction)
    include (standing, filled_in_time, changes_on, changes_to);
create index requirement_month on requirement (due, container_id, requirement, jurisdiction)
    include (standing, filled_in_time, changes_on, changes_to, site_id) where due is not null;
create index requirement_standing on requirement (standing, site_id) include (changes_on, changes_to)
    where decisive and standing <> 'DUE';
-- what is another by date alone: to be assessed anew, and to be listed at its site
create index requirement_changes on requirement (changes_on) include (container_id, site_id)
    where changes_on is not null;
create index requirement_site_changes on requirement (site_id, changes_on) include (standing, changes_to)
    where decisive and changes_on is not null;
-- it served permits that run out, which are a change like any other
drop index container_permit_expires;
