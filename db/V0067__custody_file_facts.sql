-- Each fact under the record that it counts for, which a merge or a split may have changed. Whoever judges a container
-- reads these; facts are recorded, and the chains proved, by the tables below them.
create view filed_movement as
select f.id, f.container_id, f.from_site_id, f.to_site_id, f.occurred_at, f.recorded_at, f.recorded_by
from movement f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.from_site_id, f.to_site_id, f.occurred_at, f.recorded_at, f.recorded_by
from refiled x join movement f on f.id = x.fact_id
where x.kind = 'movement';

grant select on filed_movement to collarbook_app;

create view filed_fill as
select f.id, f.container_id, f.filled_on, f.net_lb, f.recorded_at, f.recorded_by, f.filled_at, f.gross_lb,
    f.tare_lb, f.heel_lb, f.added_lb, f.gallons_added, f.liquid_temperature_f, f.product_id,
    f.specific_gravity, f.most_net_lb, f.looked_at, f.leak_checked, f.observed_overfill, f.refused_for,
    f.site_id, f.rule_book_id
from fill f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.filled_on, f.net_lb, f.recorded_at, f.recorded_by, f.filled_at, f.gross_lb,
    f.tare_lb, f.heel_lb, f.added_lb, f.gallons_added, f.liquid_temperature_f, f.product_id,
    f.specific_gravity, f.most_net_lb, f.looked_at, f.leak_checked, f.observed_overfill, f.refused_for,
    f.site_id, f.rule_book_id
from refiled x join fill f on f.id = x.fact_id
where x.kind = 'fill';

grant select on filed_fill to collarbook_app;

create view filed_emptying as
select f.id, f.container_id, f.emptied_at, f.emptied_on, f.how, f.recorded_at, f.recorded_by
from emptying f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.emptied_at, f.emptied_on, f.how, f.recorded_at, f.recorded_by
from refiled x join emptying f on f.id = x.fact_id
where x.kind = 'emptying';

grant select on filed_emptying to collarbook_app;

-- a record that is closed stands nowhere
grant delete on placement to collarbook_app;
