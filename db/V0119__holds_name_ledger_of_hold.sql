-- The ledger that told of a hold; null where none did. No default, so that rows from before read as they were entered.
alter table hold
    add column import_id uuid references ledger_import,
    add constraint hold_by_one check (recall_id is null or import_id is null);

create or replace view filed_hold as
select f.id, f.container_id, f.reason, f.note, f.recall_id, f.occurred_at, f.recorded_at, f.recorded_by, f.import_id
from hold f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.reason, f.note, f.recall_id, f.occurred_at, f.recorded_at, f.recorded_by, f.import_id
from refiled x join hold f on f.id = x.fact_id
where x.kind = 'hold';
