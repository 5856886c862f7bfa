-- Three roles: the owner runs migrations and nothing else; the application reads and writes but may never
-- change or remove a fact; the portal's role will see one customer only. Where an administrator has made
-- the roles already (a database of your own), they are kept as they are.
do $$
begin
    if not exists (select from pg_roles where rolname = 'collarbook_app') then
        create role collarbook_app nologin nosuperuser nobypassrls;
    end if;
    if not exists (select from pg_roles where rolname = 'collarbook_portal') then
        create role collarbook_portal nologin nosuperuser nobypassrls;
    end if;
end
$$;

revoke create on schema public from public;
grant usage on schema public to collarbook_app, collarbook_portal;
