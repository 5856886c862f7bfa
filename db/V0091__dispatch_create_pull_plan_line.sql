-- Which visit of a plan pulls which cylinder. Written once, with the plan that is done; the container and the site were
-- read in the same database, and their references are not checked again for each of a hundred thousand lines.
create table pull_plan_line (
    plan_id       uuid  not null references pull_plan,
    container_id  uuid  not null,
    site_id       uuid  not null,
    route_id      uuid  not null,
    vehicle_id    uuid  not null,
    visit         date  not null,
    size          text  not null,
    why           text  not null check (why in ('DUE', 'DUE_BEFORE_FIRST_VISIT', 'OVERDUE', 'OUT_OF_SERVICE')),
    -- of what is out of service none is told
    last_day      date,
    primary key (plan_id, container_id),
    constraint pull_plan_line_in_time check (why <> 'DUE' or visit <= last_day)
);

-- what a plan pulls at a site
create index pull_plan_line_site on pull_plan_line (plan_id, site_id) include (route_id, visit, container_id);
create index pull_plan_line_visit on pull_plan_line (plan_id, visit, container_id);

-- Cylinders that must come back, or may have to, and that no visit of the plan pulls.
create table pull_plan_remainder (
    plan_id       uuid  not null references pull_plan,
    container_id  uuid  not null,
    site_id       uuid,
    size          text  not null,
    reason        text  not null check (reason in ('UNDETERMINED', 'OTHER_AUTHORITY', 'PLACE_NOT_KNOWN', 'NO_ROUTE',
        'NO_VISIT_IN_HORIZON', 'NO_VEHICLE', 'RACK_NOT_KNOWN', 'SHOP_FULL', 'RACK_FULL', 'SHOP_AND_RACK_FULL')),
    last_day      date,
    -- the first and the last visit that could pull it, where there is one
    first_visit   date,
    last_visit    date,
    primary key (plan_id, container_id)
);

grant select, insert on pull_plan_line, pull_plan_remainder to collarbook_app;
