-- Columns and tables of facts that the views of filed facts did not have yet.
create or replace view filed_fill as
select f.id, f.container_id, f.filled_on, f.net_lb, f.recorded_at, f.recorded_by, f.filled_at, f.gross_lb,
    f.tare_lb, f.heel_lb, f.added_lb, f.gallons_added, f.liquid_temperature_f, f.product_id,
    f.specific_gravity, f.most_net_lb, f.looked_at, f.leak_checked, f.observed_overfill, f.refused_for,
    f.site_id, f.rule_book_id, f.told_afterwards, f.filled_by, f.leak_found
from fill f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.filled_on, f.net_lb, f.recorded_at, f.recorded_by, f.filled_at, f.gross_lb,
    f.tare_lb, f.heel_lb, f.added_lb, f.gallons_added, f.liquid_temperature_f, f.product_id,
    f.specific_gravity, f.most_net_lb, f.looked_at, f.leak_checked, f.observed_overfill, f.refused_for,
    f.site_id, f.rule_book_id, f.told_afterwards, f.filled_by, f.leak_found
from refiled x join fill f on f.id = x.fact_id
where x.kind = 'fill';

create or replace view filed_repair as
select f.id, f.container_id, f.performed_on, f.kind, f.seams, f.requalifier_id, f.requalifier_name, f.rin,
    f.approved_from, f.approval_expires, f.work, f.marks_transferred, f.certification, f.keep_until,
    f.recorded_at, f.recorded_by, f.recorded_before
from repair f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.performed_on, f.kind, f.seams, f.requalifier_id, f.requalifier_name, f.rin,
    f.approved_from, f.approval_expires, f.work, f.marks_transferred, f.certification, f.keep_until,
    f.recorded_at, f.recorded_by, f.recorded_before
from refiled x join repair f on f.id = x.fact_id
where x.kind = 'repair';

create view filed_part as
select f.id, f.container_id, f.kind, f.maker, f.model, f.serial, f.manufactured, f.fitted_on, f.labelled_for,
    f.recorded_at, f.recorded_by
from part f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.kind, f.maker, f.model, f.serial, f.manufactured, f.fitted_on, f.labelled_for,
    f.recorded_at, f.recorded_by
from refiled x join part f on f.id = x.fact_id
where x.kind = 'part';

create view filed_out_of_service as
select f.id, f.container_id, f.since, f.reason, f.recorded_at, f.recorded_by
from out_of_service f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.since, f.reason, f.recorded_at, f.recorded_by
from refiled x join out_of_service f on f.id = x.fact_id
where x.kind = 'out_of_service';

create view filed_transport_record as
select f.id, f.container_id, f.moved_on, f.percent_full, f.purpose, f.from_place, f.to_place, f.carrier,
    f.inspected_on, f.inspected_by, f.leak_free, f.secured, f.findings, f.refused_for, f.rule_book_id, f.keep_until,
    f.recorded_at, f.recorded_by
from transport_record f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.moved_on, f.percent_full, f.purpose, f.from_place, f.to_place, f.carrier,
    f.inspected_on, f.inspected_by, f.leak_free, f.secured, f.findings, f.refused_for, f.rule_book_id, f.keep_until,
    f.recorded_at, f.recorded_by
from refiled x join transport_record f on f.id = x.fact_id
where x.kind = 'transport_record';

grant select on filed_part, filed_out_of_service, filed_transport_record to collarbook_app;
