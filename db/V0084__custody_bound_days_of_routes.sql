-- Days of visits are computed and read as text within these bounds.
alter table route
    add constraint route_first_day_bounds check (first_day between '1970-01-01' and '2100-12-31');
alter table route_exception
    add constraint route_exception_day_bounds check (day between '1970-01-01' and '2100-12-31');
alter table holiday
    add constraint holiday_day_bounds check (day between '1970-01-01' and '2100-12-31');
