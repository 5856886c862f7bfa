-- What a portal asks is read under the portal's role, which sees one customer; the application takes it on for the length
-- of a transaction and holds nothing by it otherwise.
do $$
begin
    if not pg_has_role('collarbook_app', 'collarbook_portal', 'SET') then
        grant collarbook_portal to collarbook_app with inherit false, set true;
    end if;
exception when insufficient_privilege then
    raise exception 'The login that runs the migrations may not hand on the role collarbook_portal, which somebody else made.'
        using hint = 'As an administrator: grant collarbook_portal to collarbook_owner with admin option';
end
$$;
