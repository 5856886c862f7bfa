-- Containers of which more is recorded than marks, particulars, place, tests and fills: a hold, a part, a time out of
-- service, an emptying, a claim of another place, a test that was corrected, an act about identity. Most have none, and
-- are read without asking for each. Derived, and kept by the database itself, so that no writer can forget it; a row
-- stays when what it was made for is over, which costs time and never an answer. Not unique: nobody waits for anybody.
create table more_recorded (
    container_id  uuid  not null references container
);

create index more_recorded_container on more_recorded (container_id);

grant select, insert on more_recorded to collarbook_app;

create function note_more_recorded() returns trigger language plpgsql as $$
begin
    insert into more_recorded select distinct f.container_id from fresh f
    where not exists (select from more_recorded m where m.container_id = f.container_id);
    return null;
end $$;

create function note_corrected() returns trigger language plpgsql as $$
begin
    insert into more_recorded select distinct q.container_id from fresh f join requalification q on q.id = f.corrects
    where not exists (select from more_recorded m where m.container_id = q.container_id);
    return null;
end $$;

create function note_identity_act() returns trigger language plpgsql as $$
begin
    insert into more_recorded select f.from_id from fresh f union select f.into_id from fresh f;
    return null;
end $$;

create trigger note_more_recorded after insert on hold referencing new table as fresh
    for each statement execute function note_more_recorded();
create trigger note_more_recorded after insert on part referencing new table as fresh
    for each statement execute function note_more_recorded();
create trigger note_more_recorded after insert on out_of_service referencing new table as fresh
    for each statement execute function note_more_recorded();
create trigger note_more_recorded after insert on emptying referencing new table as fresh
    for each statement execute function note_more_recorded();
create trigger note_more_recorded after insert on place_claim referencing new table as fresh
    for each statement execute function note_more_recorded();
create trigger note_more_recorded after insert on refiled referencing new table as fresh
    for each statement execute function note_more_recorded();
create trigger note_more_recorded after insert on absorbed referencing new table as fresh
    for each statement execute function note_more_recorded();
create trigger note_more_recorded after insert on requalification_correction referencing new table as fresh
    for each statement execute function note_corrected();
create trigger note_more_recorded after insert on identity_act referencing new table as fresh
    for each statement execute function note_identity_act();

insert into more_recorded
select container_id from hold union select container_id from part union select container_id from out_of_service
union select container_id from emptying union select container_id from place_claim
union select container_id from refiled union select container_id from absorbed
union select q.container_id from requalification_correction k join requalification q on q.id = k.corrects
union select from_id from identity_act union select into_id from identity_act;
