-- Through which hour the due months near to each subscription were told.
create table notice_scan (
    subscription_id   uuid        primary key references notice_subscription,
    scanned_through   timestamptz not null default '-infinity'
);

grant select, insert, update on notice_scan to collarbook_app;

-- The due month of each clock that a subscription was told last: it is told once, and again when it moved.
create table notice_due_told (
    subscription_id  uuid  not null references notice_subscription,
    container_id     uuid  not null references container,
    requirement      text  not null,
    jurisdiction     text  not null,
    due              date  not null,
    primary key (subscription_id, container_id, requirement, jurisdiction)
);

grant select, insert, update, delete on notice_due_told to collarbook_app;

-- The first day on which a due month is told: so many months before it, or so many days before its last day.
create function notice_due_from(due date, lead int, lead_unit text) returns date
    language sql immutable parallel safe
return case lead_unit
    when 'MONTHS' then (due - make_interval(months => lead))::date
    else (due + interval '1 month' - interval '1 day')::date - lead
end;

grant execute on function notice_due_from(date, int, text) to collarbook_app;
