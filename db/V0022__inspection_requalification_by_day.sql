-- A mark bears a month; a record at the bench tells the day. What was corrected away may be recorded once more, so
-- each row also says how often the same had been recorded before it.
alter table requalification
    add column performed_on    date check (performed_on >= month and performed_on < month + interval '1 month'),
    add column recorded_before int  not null default 0 check (recorded_before >= 0),
    drop constraint requalification_once,
    add constraint requalification_once unique nulls not distinct
        (container_id, month, method, result, rin, performed_on, recorded_before);
