-- A container can answer for one requirement to several jurisdictions, each with a clock of its own. What is stored is
-- derived, and is assessed anew by the walk that a new engine starts: until then no jurisdiction is known of it.
alter table requirement
    -- whose rules the clock runs by; empty where that is not known
    add column jurisdiction text not null default '',
    -- the first day on which the status word is another than follows from the columns before, and that word, though no
    -- fact is recorded: a permit or a service life ends, a fact dated ahead arrives, a second clock passes its month
    add column changes_on   date,
    add column changes_to   text check (changes_to in ('CONDEMNED', 'REJECTED', 'ON_HOLD', 'UNDETERMINED',
        'OTHER_AUTHORITY', 'OVERDUE', 'USE_UP', 'DUE_THIS_MONTH', 'IN_DATE', 'NOT_REQUIRED')),
    add constraint requirement_changes check ((changes_on is null) = (changes_to is null)),
    drop constraint requirement_pkey,
    add primary key (container_id, requirement, jurisdiction);
alter table requirement alter column jurisdiction drop default;
