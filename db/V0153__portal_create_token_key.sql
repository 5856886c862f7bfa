-- What the tokens of changes are sealed with, so that nobody makes one up: one for the installation, drawn from the
-- server's strong random numbers, 244 bits of them.
create table portal_token_key (
    only_one  boolean  primary key default true check (only_one),
    secret    bytea    not null
);

insert into portal_token_key (secret)
values (sha256(convert_to(gen_random_uuid()::text || gen_random_uuid()::text, 'UTF8')));

grant select on portal_token_key to collarbook_app;
