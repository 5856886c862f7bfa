-- Sites whose customer, zone or jurisdiction changed. Containers that another transaction was at just then may have been
-- judged by what the site was before; they are judged anew until nothing can be under way that has not seen the change.
create table site_sweep (
    id              uuid    primary key,
    site_id         uuid    not null references site,
    -- the transaction that changed the site, and judged what was free
    changed_by      xid8    not null default pg_current_xact_id(),
    -- every transaction from this number on has seen it
    unseen_below    xid8
);

grant select, insert, update (unseen_below), delete on site_sweep to collarbook_app;
