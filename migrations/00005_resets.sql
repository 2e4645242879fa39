-- +goose Up
-- A one-time link with which a player sets a new password; the steward makes it.
create table resets (
    player_id   bigint not null,
    token_hash  bytea not null,
    expires_at  timestamptz not null,
    constraint resets_pkey primary key (player_id),
    constraint resets_player_fkey foreign key (player_id) references players (id) on delete cascade
);

-- What the player is told of at the next sign-in.
alter table players add column notice text not null default '';

-- +goose Down
alter table players drop column notice;
drop table resets;
