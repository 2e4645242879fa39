-- +goose Up
create table rounds (
    player_id    bigint not null,
    id           bigint generated always as identity,
    name         text not null,
    played_on    date not null,
    course       text not null,
    tee          text not null,
    target       double precision not null,
    boundary_yd  double precision not null,
    par18        integer not null,
    note         text not null default '',
    created_at   timestamptz not null default now(),
    deleted_at   timestamptz,
    constraint rounds_pkey primary key (player_id, id),
    constraint rounds_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint rounds_target_check check (target between 68 and 110)
);
create index rounds_player_played_on_idx on rounds (player_id, played_on desc, id desc);

-- A round keeps its own copy of the card. A hole that has not been played has
-- no line; version counts its saves, so that two windows are told apart.
create table holes (
    player_id   bigint not null,
    round_id    bigint not null,
    number      integer not null,
    par         integer not null,
    length_in   double precision not null,
    line        text not null default '',
    picked_up   boolean not null default false,
    score_only  integer not null default 0,
    version     integer not null default 0,
    constraint holes_pkey primary key (player_id, round_id, number),
    constraint holes_round_fkey foreign key (player_id, round_id) references rounds (player_id, id) on delete cascade,
    constraint holes_number_check check (number between 1 and 18),
    constraint holes_par_check check (par between 3 and 6)
);

create table shots (
    player_id      bigint not null,
    round_id       bigint not null,
    hole           integer not null,
    number         integer not null,
    lie            text not null,
    distance_in    double precision not null,
    unit           text not null,
    about          boolean not null,
    penalty        integer not null,
    short_sided    boolean not null,
    green_in       double precision,
    club           text not null,
    miss           text not null,
    constraint shots_pkey primary key (player_id, round_id, hole, number),
    constraint shots_hole_fkey foreign key (player_id, round_id, hole) references holes (player_id, round_id, number) on delete cascade,
    constraint shots_lie_check check (lie in ('tee', 'fairway', 'rough', 'bunker', 'recovery', 'green')),
    constraint shots_distance_check check (distance_in > 0),
    constraint shots_penalty_check check (penalty between 0 and 9)
);

-- +goose Down
drop table shots;
drop table holes;
drop table rounds;
