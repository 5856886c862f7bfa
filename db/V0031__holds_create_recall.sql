-- A recall by maker, narrowed by what it names; facts, so never changed. Lots are not known of containers, so a lot is
-- told to whoever looks at one and narrows nothing.
create table recall (
    id                  uuid        primary key,
    maker               text        not null check (length(maker) between 1 and 20),
    lot                 text        check (length(lot) between 1 and 200),
    specification       text,
    serial_first        text        check (length(serial_first) between 1 and 40),
    serial_last         text        check (length(serial_last) between 1 and 40),
    -- how many characters stand before the digits that are counted; the same in every serial of the range
    serial_prefix       int         check (serial_prefix >= 0),
    manufactured_first  date        check (extract(day from manufactured_first) = 1),
    manufactured_last   date        check (extract(day from manufactured_last) = 1),
    issued_by           text        not null check (length(issued_by) between 1 and 200),
    reference           text        check (length(reference) between 1 and 200),
    occurred_at         timestamptz not null,
    recorded_at         timestamptz not null default now(),
    recorded_by         uuid        not null,
    constraint recall_serials check ((serial_first is null) = (serial_last is null)
        and (serial_first is null) = (serial_prefix is null)),
    constraint recall_serials_alike check (length(serial_first) = length(serial_last)
        and left(serial_first, serial_prefix) = left(serial_last, serial_prefix)),
    constraint recall_months check (manufactured_first <= manufactured_last)
);

grant select, insert on recall to collarbook_app;

alter table hold add constraint hold_of_recall foreign key (recall_id) references recall;

-- From here on it places no more holds; those it has placed stand until each is lifted.
create table recall_end (
    recall_id    uuid        primary key references recall,
    reason       text        not null check (length(reason) between 1 and 1000),
    occurred_at  timestamptz not null,
    recorded_at  timestamptz not null default now(),
    recorded_by  uuid        not null
);

grant select, insert on recall_end to collarbook_app;

-- Whether the containers that were registered before a recall have all been looked at. What registers at the same
-- moment does not see the recall yet: it is over once every transaction that may not have seen it has ended.
create table recall_sweep (
    recall_id     uuid        primary key references recall,
    unseen_below  xid8,
    finished_at   timestamptz
);

grant select, insert, update (unseen_below, finished_at) on recall_sweep to collarbook_app;
