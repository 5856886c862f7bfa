-- What became of each line, and why, is kept by pass. A row that could mean more than one thing has an outcome of its own.
alter table ledger_import_outcome add column pass_id uuid references ledger_pass;
alter table ledger_import_problem add column pass_id uuid references ledger_pass;

update ledger_import_outcome o set pass_id = p.id from ledger_pass p
    where p.import_id = o.import_id and p.purpose = o.pass;
update ledger_import_problem o set pass_id = p.id from ledger_pass p
    where p.import_id = o.import_id and p.purpose = o.pass;

alter table ledger_import_outcome
    drop column import_id,
    drop column pass,
    drop constraint ledger_import_outcome_outcome_check,
    add constraint ledger_import_outcome_outcome_check
        check (outcome in ('NEW', 'CHANGED', 'UNCHANGED', 'REFUSED', 'AMBIGUOUS')),
    add primary key (pass_id, first_line);

alter table ledger_import_problem
    drop column import_id,
    drop column pass,
    add primary key (pass_id, line, number);

update ledger_pass p set through_line = (select max(o.last_line) from ledger_import_outcome o where o.pass_id = p.id);

alter table ledger_import
    drop column state,
    drop column rows_read,
    drop column rows_new,
    drop column rows_changed,
    drop column rows_unchanged,
    drop column rows_refused,
    drop column committed_at,
    drop column committed_by,
    drop column version;
