-- Each fact under the record that it counts for, which a merge or a split may have changed. Whoever judges a container
-- reads these; facts are recorded, and the chains proved, by the tables below them.
create view filed_requalification as
select f.id, f.container_id, f.month, f.method, f.star, f.plus, f.rin, f.rin_seen, f.result, f.as_stamped,
    f.declaration_id, f.recorded_at, f.recorded_by, f.performed_on, f.recorded_before
from requalification f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.month, f.method, f.star, f.plus, f.rin, f.rin_seen, f.result, f.as_stamped,
    f.declaration_id, f.recorded_at, f.recorded_by, f.performed_on, f.recorded_before
from refiled x join requalification f on f.id = x.fact_id
where x.kind = 'requalification';

grant select on filed_requalification to collarbook_app;

create view filed_repair as
select f.id, f.container_id, f.performed_on, f.kind, f.seams, f.requalifier_id, f.requalifier_name, f.rin,
    f.approved_from, f.approval_expires, f.work, f.marks_transferred, f.certification, f.keep_until,
    f.recorded_at, f.recorded_by
from repair f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.performed_on, f.kind, f.seams, f.requalifier_id, f.requalifier_name, f.rin,
    f.approved_from, f.approval_expires, f.work, f.marks_transferred, f.certification, f.keep_until,
    f.recorded_at, f.recorded_by
from refiled x join repair f on f.id = x.fact_id
where x.kind = 'repair';

grant select on filed_repair to collarbook_app;
