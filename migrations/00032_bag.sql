-- The clubs that a player hits from the tee, and balls hit on the range with one aim.
-- +goose Up
create table bag_clubs (
    player_id  bigint not null,
    club       text not null,
    length_yd  double precision not null,
    shape_yd   double precision not null,
    constraint bag_clubs_pkey primary key (player_id, club),
    constraint bag_clubs_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint bag_clubs_length_check check (length_yd >= 0)
);

create table range_sessions (
    player_id    bigint not null,
    id           bigint generated always as identity,
    club         text not null,
    day          date not null,
    balls        text not null,
    recorded_at  timestamptz not null default now(),
    removed_at   timestamptz,
    constraint range_sessions_pkey primary key (player_id, id),
    constraint range_sessions_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint range_sessions_size_check check (length(balls) <= 20000)
);

-- +goose Down
drop table range_sessions;
drop table bag_clubs;
