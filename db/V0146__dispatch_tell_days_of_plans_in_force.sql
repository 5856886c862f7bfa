-- The routes that go by an accepted plan on some day of it: a plan that was accepted later takes the place of this one on
-- the days that both are made for, and on no others.
drop view pull_plan_in_force;

create view pull_plan_in_force as
select r.route_id, p.id as plan_id
from pull_plan p join pull_plan_route r on r.plan_id = p.id
cross join lateral (select max(a.number) as number from pull_plan_acceptance a where a.plan_id = p.id) accepted
where accepted.number is not null
  and not isempty(datemultirange(daterange(p.from_day, p.through_day, '[]')) - coalesce((
    select range_agg(daterange(q.from_day, q.through_day, '[]'))
    from pull_plan_route s join pull_plan q on q.id = s.plan_id join pull_plan_acceptance a on a.plan_id = q.id
    where s.route_id = r.route_id and a.number > accepted.number), '{}'::datemultirange));

grant select on pull_plan_in_force to collarbook_app;
