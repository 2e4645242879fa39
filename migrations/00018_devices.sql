-- +goose Up
-- A browser that a player signed in with: strangers who try passwords do not get
-- in its way. It stays known after signing out.
create table devices (
    player_id   bigint not null,
    token_hash  bytea not null,
    seen_at     timestamptz not null default now(),
    constraint devices_pkey primary key (player_id, token_hash),
    constraint devices_player_fkey foreign key (player_id) references players (id) on delete cascade
);

-- Tries of a password, by account and by where they came from; an empty client
-- counts those of everywhere. One row is one count, so that tries at the same
-- moment wait for each other.
create table tries (
    account   bytea not null,
    client    bytea not null,
    n         bigint not null,
    began_at  timestamptz not null default now(),
    constraint tries_pkey primary key (account, client)
);
drop table sign_in_failures;

-- +goose Down
create table sign_in_failures (
    email_hash  bytea not null,
    at          timestamptz not null default now()
);
create index sign_in_failures_email_hash_at_idx on sign_in_failures (email_hash, at);
drop table tries;
drop table devices;
