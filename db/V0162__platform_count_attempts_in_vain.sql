-- A job is given up after attempts that came to nothing, however often it was begun: an attempt that stored a part of it
-- for good did come to something.
alter table pull_plan add column in_vain int not null default 0;
alter table ledger_pass add column in_vain int not null default 0;
alter table schedule_export add column in_vain int not null default 0;
