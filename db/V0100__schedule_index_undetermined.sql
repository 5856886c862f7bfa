-- Clocks without a due month, in the order of their list; few, so few rows of the register are in it. A hold or a
-- rejection stands before "undetermined" in the standing of the clock that decides, so those are looked at as well.
create index requirement_undetermined on requirement (container_id, requirement, jurisdiction)
    where due is null and standing in ('UNDETERMINED', 'ON_HOLD', 'REJECTED');
