-- The first day on which a container must not be where it is used: out of service it is so whatever the date, past its
-- month from the first of the next, and else from the day on which it goes out of service by date alone. Infinite where
-- it cannot be told, null where there is none.
create function out_from(standing text, due date, changes_on date, changes_to text) returns date
    language sql immutable parallel safe
return case
    when standing in ('CONDEMNED', 'REJECTED', 'ON_HOLD') then date '-infinity'
    else least(
        case standing when 'DUE' then (due + interval '1 month')::date when 'UNDETERMINED' then date 'infinity' end,
        case when changes_to in ('CONDEMNED', 'REJECTED', 'ON_HOLD', 'OVERDUE') then changes_on end)
end;

grant execute on function out_from(text, date, date, text) to collarbook_app;

-- what nobody knows the place of, in the order in which it should have come back
create index requirement_placeless on requirement (out_from(standing, due, changes_on, changes_to), container_id)
    where site_id is null;
