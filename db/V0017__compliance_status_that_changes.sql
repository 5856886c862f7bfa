drop function container_status(text, date, boolean, date);

-- The status word on a date, from what is stored. The last day of the due month still counts as in date
-- (49 CFR 180.205(c)); from the first of the next month the container is overdue.
create function container_status(standing text, due date, filled_in_time boolean, changes_on date, changes_to text,
        as_of date) returns text
    language sql immutable parallel safe
return case
    when as_of >= changes_on then changes_to
    when standing <> 'DUE' then standing
    when as_of >= (due + interval '1 month')::date then case when filled_in_time then 'USE_UP' else 'OVERDUE' end
    when as_of >= due then 'DUE_THIS_MONTH'
    else 'IN_DATE'
end;

grant execute on function container_status(text, date, boolean, date, text, date) to collarbook_app;
