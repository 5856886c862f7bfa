-- A fill that was told after it had happened is recorded whatever the rules say of it; one that was not allowed bears the
-- reasons. Its weight may not be known, as where the tare is not.
alter table fill
    add column told_afterwards boolean not null default false,
    drop constraint fill_gross,
    add constraint fill_gross check (gross_lb is null or tare_lb is not null and gross_lb >= tare_lb
        or told_afterwards and tare_lb is null and net_lb is null and refused_for <> '{}'),
    drop constraint fill_within_limit,
    add constraint fill_within_limit check (observed_overfill or filled_at is null
        or refused_for = '{}' and most_net_lb is not null and net_lb is not null and net_lb <= most_net_lb
        or told_afterwards and refused_for <> '{}');
