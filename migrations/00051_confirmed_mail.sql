-- Mail about notices begins when the reader of the account's address has confirmed it by
-- a link in a letter. proved is the address that was confirmed, so that no other address
-- the account gets later is mailed; asked is the address to which the last letter with
-- a link went, and null when one is still owed. Accounts that got mail before this step
-- are asked like everybody else.
--
-- asked_addresses counts such letters by address, as a hash, because an account can be
-- deleted and made again; refused_at is when the reader wanted no more of them.
-- +goose Up
alter table digests
    add column proved text,
    add column proved_at timestamptz,
    add column asked text,
    add column asked_hash bytea,
    add column asked_at timestamptz,
    add column asked_until timestamptz;
create table asked_addresses (
    address_hash  bytea not null,
    n             integer not null,
    began_at      timestamptz not null,
    refused_at    timestamptz,
    constraint asked_addresses_pkey primary key (address_hash)
);

-- +goose Down
drop table asked_addresses;
delete from digests where proved is null;
alter table digests
    drop column proved,
    drop column proved_at,
    drop column asked,
    drop column asked_hash,
    drop column asked_at,
    drop column asked_until;
