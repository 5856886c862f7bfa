-- A container that was filled although it was not allowed.
alter table hold
    drop constraint hold_reason_check,
    add constraint hold_reason_check check (reason in ('OVERFILLED_OR_DISCHARGED', 'FILLED_NOT_ALLOWED', 'DENTED',
        'CORRODED', 'LEAKING', 'FIRE_OR_OVERHEATED', 'ACCIDENT', 'ILLEGIBLE_MARKS', 'COLLAR_OR_FOOT_RING_MISSING',
        'TARE_LOSS', 'VALVE_DEFECT', 'RECALLED', 'LOST', 'IDENTITY_DISPUTED', 'OWNER_CONSENT_MISSING'));
