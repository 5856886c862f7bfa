-- Everybody may make temporary tables in a database unless it is taken back: the portal's role reads, and nothing else.
-- Where another role owns the database, that is for its administrator to do.
do $$
begin
    if exists (select from pg_database where datname = current_database() and pg_has_role(datdba, 'USAGE')) then
        execute format('revoke temporary on database %I from public', current_database());
        execute format('grant temporary on database %I to collarbook_owner, collarbook_app', current_database());
    end if;
end
$$;
