-- What is kept is the plain text of what was handed in: of a file that was gzipped, or a workbook, it has another length.
-- Null is as long as the file, which was CSV.
alter table ledger_import add column text_bytes bigint;
-- The sheet of a workbook that was read.
alter table ledger_import add column sheet text;
