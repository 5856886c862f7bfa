-- Held as lost, and neither moved nor seen since: nobody can bring it back.
create function held_as_lost(container uuid) returns boolean
    language sql stable parallel safe
return exists (
    select from filed_hold h where h.container_id = container and h.reason = 'LOST'
      and not exists (select from lift_in_force l where l.hold_id = h.id)
      and not exists (
        select from filed_movement m where m.container_id = container and m.occurred_at > h.occurred_at)
      and not exists (
        select from filed_sighting g where g.container_id = container and g.occurred_at > h.occurred_at));

grant execute on function held_as_lost(uuid) to collarbook_app;
