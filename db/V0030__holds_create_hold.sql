-- A reason to keep a container out of service; facts, so never changed. It stands until it has a lift.
create table hold (
    id            uuid        primary key,
    container_id  uuid        not null references container,
    reason        text        not null check (reason in ('OVERFILLED_OR_DISCHARGED', 'DENTED', 'CORRODED', 'LEAKING',
        'FIRE_OR_OVERHEATED', 'ACCIDENT', 'ILLEGIBLE_MARKS', 'COLLAR_OR_FOOT_RING_MISSING', 'TARE_LOSS',
        'VALVE_DEFECT', 'RECALLED', 'LOST', 'IDENTITY_DISPUTED', 'OWNER_CONSENT_MISSING')),
    note          text        check (length(note) between 1 and 1000),
    recall_id     uuid,
    occurred_at   timestamptz not null,
    recorded_at   timestamptz not null default now(),
    recorded_by   uuid        not null,
    constraint hold_by_recall check (recall_id is null or reason = 'RECALLED'),
    -- one that was lifted is not placed again by the same recall
    constraint hold_recall_once unique (container_id, recall_id)
);

create index hold_recall on hold (recall_id, container_id) where recall_id is not null;

grant select, insert on hold to collarbook_app;

-- What lifted a hold: one of the three ways, with what that way asks for.
create table hold_lift (
    id                  uuid        primary key,
    hold_id             uuid        not null references hold,
    lifted_by           text        not null check (lifted_by in ('REQUALIFICATION', 'COMPETENT_PERSON', 'CLERK')),
    requalification_id  uuid        references requalification,
    person              text        check (length(person) between 1 and 200),
    qualification       text        check (length(qualification) between 1 and 200),
    note                text        check (length(note) between 1 and 1000),
    occurred_at         timestamptz not null,
    recorded_at         timestamptz not null default now(),
    recorded_by         uuid        not null,
    constraint hold_lift_way check ((lifted_by = 'REQUALIFICATION') = (requalification_id is not null)
        and (lifted_by = 'COMPETENT_PERSON') = (person is not null)
        and (lifted_by = 'COMPETENT_PERSON') = (qualification is not null)),
    -- one that lifted a hold and was then found to be a mistake does not lift it again
    constraint hold_lift_by_requalification_once unique (hold_id, requalification_id)
);

create index hold_lift_hold on hold_lift (hold_id);

grant select, insert on hold_lift to collarbook_app;

-- The one place that says which lifts count.
create view lift_in_force as select * from hold_lift;

grant select on lift_in_force to collarbook_app;
