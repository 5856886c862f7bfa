-- One completed inspection or test; facts, so never changed. A null method is a missing fact: a month is
-- known, how it was tested is not.
create table requalification (
    id              uuid        primary key,
    container_id    uuid        not null references container,
    month           date        not null check (extract(day from month) = 1),
    method          text        check (method in ('VOLUMETRIC_EXPANSION', 'PROOF_PRESSURE', 'EXTERNAL_VISUAL',
        'ULTRASONIC', 'EDDY_CURRENT_VISUAL', 'ACOUSTIC_EMISSION', 'SHELL_ONLY', 'SHELL_AND_FILLER',
        'V', 'I', 'K', 'P')),
    star            boolean     not null default false,
    plus            boolean     not null default false,
    rin             text,
    rin_seen        boolean     not null default false,
    result          text        not null default 'PASSED' check (result in ('PASSED', 'REJECTED', 'CONDEMNED')),
    as_stamped      text,
    declaration_id  uuid        references declaration,
    recorded_at     timestamptz not null default now(),
    recorded_by     uuid        not null,
    -- what was recorded once is not recorded twice; another result of the same month is another fact
    constraint requalification_once unique nulls not distinct (container_id, month, method, result, rin)
);

grant select, insert on requalification to collarbook_app;
