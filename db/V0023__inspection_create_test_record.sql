-- The full contents of a record, 49 CFR 180.215(b) and 180.209(g), beside the row that assessments read. Facts, so
-- never changed. What the method does not measure is null.
create table test_record (
    requalification_id    uuid           primary key references requalification,
    requalifier_id        uuid           references requalifier,
    -- the facility and its approval as they stood then: one that lapses later leaves the record valid
    requalifier_name      text,
    approved_from         date,
    approval_expires      date,
    -- what was looked at: item, finding, note
    visual                jsonb          not null,
    marked_pressure_psig  int            check (marked_pressure_psig > 0),
    test_pressure_psig    int            check (test_pressure_psig > 0),
    minimum_psig          numeric(9, 2)  check (minimum_psig > 0),
    total_cm3             numeric(12, 3) check (total_cm3 > 0),
    elastic_cm3           numeric(12, 3),
    permanent_cm3         numeric(12, 3) check (permanent_cm3 >= 0),
    -- permanent over total, rounded up; the decision was made on the exact ratio
    permanent_percent     numeric(5, 2),
    limit_percent         numeric(5, 2),
    -- earlier attempts at the test, when the apparatus failed
    repeats               jsonb          not null,
    coating               text,
    owner                 text,
    operator              text           not null,
    tare_lb               numeric(10, 3) check (tare_lb > 0),
    -- rounded down; below nothing when it weighs more than is stamped
    tare_loss_percent     numeric(9, 2),
    grounds               text[]         not null,
    disposition           text,
    note                  text,
    -- why the result is what it is, each with its citation
    remarks               jsonb          not null,
    constraint test_record_facility check (num_nulls(requalifier_id, requalifier_name, approved_from,
        approval_expires) in (0, 4)),
    constraint test_record_expansion check (num_nulls(total_cm3, elastic_cm3, permanent_cm3, permanent_percent,
        limit_percent) in (0, 5) and elastic_cm3 = total_cm3 - permanent_cm3)
);

grant select, insert on test_record to collarbook_app;
