-- The feed of an account's notices, for a program that reads feeds: there is a row
-- while it is on. token_hash is of the secret in its address, and name what the
-- identifiers in the feed are made of, which stay when the address changes.
-- +goose Up
create table feeds (
    player_id   bigint not null,
    token_hash  bytea not null,
    name        uuid not null,
    made_at     timestamptz not null default now(),
    constraint feeds_pkey primary key (player_id),
    constraint feeds_player_fkey foreign key (player_id) references players (id) on delete cascade
);

-- +goose Down
drop table feeds;
