-- What a coach writes again and again: player_id is the coach.
-- +goose Up
create table phrases (
    player_id   bigint not null,
    id          bigint generated always as identity,
    body        text not null,
    kept_at     timestamptz not null default now(),
    removed_at  timestamptz,
    constraint phrases_pkey primary key (player_id, id),
    constraint phrases_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint phrases_body_check check (body <> '')
);

-- +goose Down
drop table phrases;
