-- +goose Up
-- Balls that a player measured: how far they flew and how far they went in all, as
-- they were typed and in the unit they were typed in. entered_as and place make of a
-- line that is sent twice one that is stored once.
create table runout_trials (
    player_id    bigint not null,
    id           bigint generated always as identity,
    entered_as   text not null,
    place        integer not null,
    club         text not null,
    lie          text not null,
    green        text not null,
    carry        double precision not null,
    total        double precision not null,
    unit         text not null,
    day          date not null,
    recorded_at  timestamptz not null default now(),
    removed_at   timestamptz,
    constraint runout_trials_pkey primary key (player_id, id),
    constraint runout_trials_entered_key unique (player_id, entered_as, place),
    constraint runout_trials_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint runout_trials_club_check check (length(club) between 1 and 40),
    constraint runout_trials_lie_check check (lie in ('fairway', 'rough')),
    constraint runout_trials_green_check check (green in ('slow', 'medium', 'fast')),
    constraint runout_trials_unit_check check (unit in ('yd', 'm', 'paces')),
    constraint runout_trials_lengths_check check (carry > 0 and carry <= 60 and total > 0 and total <= 100)
);

-- +goose Down
drop table runout_trials;
