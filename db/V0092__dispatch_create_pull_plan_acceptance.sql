-- The routes that a plan drove, whether or not it pulls anything on them.
create table pull_plan_route (
    plan_id   uuid not null references pull_plan,
    route_id  uuid not null references route,
    -- of the route when the plan was made: a later one may be driven on other days
    version   int  not null,
    primary key (route_id, plan_id)
);

-- That somebody took a plan for the one to go by. Kept; an older plan may be accepted again.
create table pull_plan_acceptance (
    id           uuid        primary key,
    number       int         not null generated always as identity,
    plan_id      uuid        not null references pull_plan,
    accepted_at  timestamptz not null,
    accepted_by  uuid        not null,
    constraint pull_plan_acceptance_number unique (number)
);

create index pull_plan_acceptance_plan on pull_plan_acceptance (plan_id, number);

grant select, insert on pull_plan_route, pull_plan_acceptance to collarbook_app;

-- For each route the plan in force: of those that drove it, the one that was accepted last.
create view pull_plan_in_force as
select distinct on (r.route_id) r.route_id, a.plan_id, p.number, a.accepted_at
from pull_plan_acceptance a join pull_plan_route r on r.plan_id = a.plan_id join pull_plan p on p.id = a.plan_id
order by r.route_id, a.number desc;

grant select on pull_plan_in_force to collarbook_app;
