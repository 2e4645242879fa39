-- +goose Up
-- One file a player waits to be confirmed; it expires after an hour.
create table imports (
    player_id   bigint not null,
    file        bytea not null,
    created_at  timestamptz not null default now(),
    constraint imports_pkey primary key (player_id),
    constraint imports_player_fkey foreign key (player_id) references players (id) on delete cascade
);
create index rounds_player_name_idx on rounds (player_id, name) where deleted_at is null;

-- +goose Down
drop index rounds_player_name_idx;
drop table imports;
