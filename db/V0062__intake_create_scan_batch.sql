-- What a device that worked offline sends later, under the sender's own name for it.
create table scan_batch (
    id           uuid         primary key,
    sender       uuid         not null,
    name         text         not null check (length(name) between 1 and 200),
    received_at  timestamptz  not null default now(),
    constraint scan_batch_name unique (sender, name)
);

grant select, insert on scan_batch to collarbook_app;

-- What became of a line, stored with what it recorded; never changed. A line that was refused has recorded nothing, so it
-- may be sent again under its id, as it was or mended.
create table scan_line (
    id           uuid         primary key,
    sender       uuid         not null,
    line_id      text         not null check (length(line_id) between 1 and 200),
    batch_id     uuid         not null references scan_batch,
    position     int          not null check (position >= 0),
    -- SHA-256 of the line as sent
    content      bytea        not null check (length(content) = 32),
    outcome      text         not null check (outcome in ('RECORDED', 'RECORDED_NOT_ALLOWED', 'REFUSED')),
    answer       text         not null,
    recorded_at  timestamptz  not null default now()
);

create unique index scan_line_recorded on scan_line (sender, line_id) where outcome <> 'REFUSED';
create unique index scan_line_refused on scan_line (sender, line_id, content) where outcome = 'REFUSED';
create index scan_line_batch on scan_line (batch_id, position, id);

grant select, insert on scan_line to collarbook_app;
