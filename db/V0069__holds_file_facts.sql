-- Each fact under the record that it counts for, which a merge or a split may have changed. Whoever judges a container
-- reads these; facts are recorded, and the chains proved, by the tables below them.
create view filed_hold as
select f.id, f.container_id, f.reason, f.note, f.recall_id, f.occurred_at, f.recorded_at, f.recorded_by
from hold f where not exists (select from refiled x where x.fact_id = f.id)
union all
select f.id, x.container_id, f.reason, f.note, f.recall_id, f.occurred_at, f.recorded_at, f.recorded_by
from refiled x join hold f on f.id = x.fact_id
where x.kind = 'hold';

grant select on filed_hold to collarbook_app;

-- The one place that says which lifts count. None does whose requalification was taken back as a mistake, or counts for
-- another container than the hold; nor one that was recorded while the hold was filed under a record to which it turned
-- out not to belong: nobody knows which of the two was looked at.
create or replace view lift_in_force as
select * from hold_lift l
where not exists (select from requalification_correction k where k.corrects = l.requalification_id)
  and (l.requalification_id is null
    or (select coalesce(x.container_id, q.container_id) from requalification q
        left join refiled x on x.fact_id = q.id where q.id = l.requalification_id)
      = (select coalesce(x.container_id, h.container_id) from hold h
        left join refiled x on x.fact_id = h.id where h.id = l.hold_id))
  and (select true from identity_act_fact f join identity_act a on a.id = f.act_id
        join identity_act_undo u on u.act_id = f.act_id
        where f.fact_id = l.hold_id and l.recorded_at between a.recorded_at and u.recorded_at limit 1) is null;
