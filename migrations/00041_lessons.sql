-- A lesson that a pupil and a coach have arranged. starts is minutes after midnight
-- where it takes place, null where no time is set; changes counts how often it was
-- moved, so that a calendar tells a later file from an earlier one. It stays with the
-- pupil when the coach's account is gone: coach_name is the name of that coach.
-- +goose Up
create table lessons (
    player_id   bigint not null,
    id          bigint generated always as identity,
    coach_id    bigint,
    coach_name  text not null default '',
    day         date not null,
    starts      integer,
    place       text not null default '',
    aim         text not null default '',
    agreed      text not null default '',
    changes     integer not null default 0,
    removed_at  timestamptz,
    constraint lessons_pkey primary key (player_id, id),
    constraint lessons_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint lessons_coach_fkey foreign key (coach_id) references players (id) on delete set null,
    constraint lessons_starts_check check (starts between 0 and 1439)
);
create index lessons_day_idx on lessons (player_id, day);
create index lessons_coach_idx on lessons (coach_id);

-- +goose Down
drop table lessons;
