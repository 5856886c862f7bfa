-- The marks that were corrected together are one act, which can be taken back by its name. Rows from before have none:
-- each is an act by itself.
alter table mark_correction
    add column act_id      uuid,
    add column takes_back  uuid;

create index mark_correction_act on mark_correction (coalesce(act_id, id));
-- a scan of a tag that nobody bears any more
create index mark_correction_former_tag on mark_correction (was) where field = 'tag';
