-- +goose Up
-- Which of a pupil's pages a coach opened, day by day, for the pupil to read;
-- it stays when the access ends, and keeps the name when the coach's account is deleted.
create table coach_looks (
    player_id  bigint not null,
    coach_id   bigint not null,
    day        date not null,
    page       text not null,
    name       text not null,
    times      integer not null default 1,
    last_at    timestamptz not null default now(),
    constraint coach_looks_pkey primary key (player_id, coach_id, day, page),
    constraint coach_looks_player_fkey foreign key (player_id) references players (id) on delete cascade
);

-- When the visit before the present one ended: what came since is new.
alter table coachings add column before_at timestamptz;

-- +goose Down
alter table coachings drop column before_at;
drop table coach_looks;
