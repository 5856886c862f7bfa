-- The containers of customers who are told of changes, as they were last seen: what is different now is what is told.
-- Derived; a customer without a subscription has no rows.
create table notice_seen (
    container_id  uuid  primary key references container,
    customer_id   uuid  not null,
    site_id       uuid  not null,
    word          text  not null check (word in ('IN_SERVICE', 'HELD', 'CONDEMNED'))
);

create index notice_seen_customer on notice_seen (customer_id);

grant select, insert, update, delete on notice_seen to collarbook_app;

create function notice_word(standing text) returns text
    language sql immutable parallel safe
return case standing when 'CONDEMNED' then 'CONDEMNED' when 'REJECTED' then 'HELD' when 'ON_HOLD' then 'HELD'
    else 'IN_SERVICE' end;

-- Whether anybody is told of changes. Asked once in each transaction that changes containers; the lock, held to its end,
-- keeps a first subscription from noting how things stand while such a transaction is under way. Two statements, since
-- the second must see what was committed while the first waited.
create function notices_are_asked_for() returns boolean
    language plpgsql volatile
as $$
begin
    perform pg_advisory_xact_lock_shared(hashtextextended('notice_subscription', 0));
    return exists (select from notice_subscription where status <> 'ENDED');
end
$$;

grant execute on function notice_word(text), notices_are_asked_for() to collarbook_app;
