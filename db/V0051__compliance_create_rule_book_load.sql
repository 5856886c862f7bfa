-- Which rule book answered from when on: a book may be loaded again after another.
create table rule_book_load (
    rule_book_id  smallint     not null references rule_book,
    loaded_at     timestamptz  not null default now(),
    primary key (loaded_at, rule_book_id)
);

grant select, insert on rule_book_load to collarbook_app;

insert into rule_book_load (rule_book_id, loaded_at) select id, loaded_at from rule_book;
