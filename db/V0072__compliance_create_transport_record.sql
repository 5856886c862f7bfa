-- Moves by road of tanks that otherwise stay, 49 CFR 173.315(j), with the inspection before the move; facts, so never
-- changed.
create table transport_record (
    id            uuid          primary key,
    container_id  uuid          not null references container,
    moved_on      date          not null,
    percent_full  numeric(5, 2) not null check (percent_full between 0 and 100),
    purpose       text          not null check (purpose in ('DELIVERY', 'TO_OWNER', 'TO_REQUALIFIER', 'TO_SCRAP')),
    from_place    text          not null check (length(from_place) between 1 and 200),
    to_place      text          not null check (length(to_place) between 1 and 200),
    carrier       text          not null check (length(carrier) between 1 and 200),
    inspected_on  date          not null,
    inspected_by  text          not null check (length(inspected_by) between 1 and 200),
    leak_free     boolean       not null,
    secured       boolean       not null,
    findings      text          check (length(findings) between 1 and 1000),
    -- it happened though it must not have been; codes
    refused_for   text[]        not null default '{}',
    rule_book_id  smallint      not null references rule_book,
    keep_until    date          not null check (keep_until > moved_on),
    recorded_at   timestamptz   not null default now(),
    recorded_by   uuid          not null,
    constraint transport_record_inspected_before check (inspected_on <= moved_on),
    constraint transport_record_once unique (container_id, moved_on, from_place, to_place)
);

grant select, insert on transport_record to collarbook_app;
