-- A container may rest on several declarations: beside each declared fact, the one it rests on. Null where all rest on the
-- one that the container was registered under. No default, so that rows from before read as they were entered.
alter table container
    add column declared_in            uuid[],
    -- whose rules govern it where no site tells, by the declaration that stands beside 'jurisdiction'
    add column declared_jurisdiction  text;

alter table container
    drop constraint container_declared_has_declaration,
    add constraint container_declared_has_declaration check
        (cardinality(declared) = 0 or declaration_id is not null or declared_in is not null),
    add constraint container_declared_each check (cardinality(declared_in) = cardinality(declared)),
    add constraint container_jurisdiction_declared check
        (declared_jurisdiction is null or 'jurisdiction' = any (declared));
