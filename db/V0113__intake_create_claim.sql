-- What the rows of a commit that goes in pieces have laid claim to so far: marks and tags, by digest. Written with each
-- piece, so that whoever goes on after a kill knows what was claimed, and removed when the pass is over.
create table ledger_claim (
    pass     int    not null,
    digest   uuid   not null,
    maker    text,
    month    date,
    line     bigint not null,
    content  int    not null,
    constraint ledger_claim_once unique nulls not distinct (pass, digest, maker, month)
);

grant select, insert, delete on ledger_claim to collarbook_app;
