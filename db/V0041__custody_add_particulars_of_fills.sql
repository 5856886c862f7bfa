-- A fill as recorded at the scale or the meter; what a fill of a ledger does not tell stays null. net_lb is what was in
-- the container after the fill, whatever part of it was there before.
alter table fill
    add column filled_at             timestamptz,
    add column gross_lb              numeric(10, 3) check (gross_lb > 0),
    add column tare_lb               numeric(10, 3) check (tare_lb > 0),
    add column heel_lb               numeric(10, 3) check (heel_lb >= 0),
    add column added_lb              numeric(10, 3) check (added_lb >= 0),
    add column gallons_added         numeric(12, 3) check (gallons_added > 0),
    add column liquid_temperature_f  numeric(5, 1),
    add column product_id            uuid           references product,
    add column specific_gravity      numeric(5, 4)  check (specific_gravity > 0 and specific_gravity < 1),
    -- the most that was allowed at that time; null where no rule gave it
    add column most_net_lb           numeric(12, 2) check (most_net_lb > 0),
    -- 49 CFR 173.301(a)(2): each cylinder is looked at before it is filled
    add column looked_at             boolean,
    add column leak_checked          boolean,
    -- found filled though it must not be, or beyond the limit: a fact, never a permission
    add column observed_overfill     boolean        not null default false,
    -- why it would have been refused; codes
    add column refused_for           text[]         not null default '{}',
    add column site_id               uuid           references site,
    add column rule_book_id          smallint       references rule_book,
    add constraint fill_gross check (gross_lb is null or tare_lb is not null and gross_lb >= tare_lb),
    add constraint fill_within_limit check (observed_overfill or filled_at is null
        or most_net_lb is not null and net_lb <= most_net_lb and refused_for = '{}');

-- one cylinder may be filled twice a day to the same weight
alter table fill drop constraint fill_once;
alter table fill add constraint fill_once unique nulls not distinct (container_id, filled_on, net_lb, filled_at);
