-- +goose Up
-- How many minutes a week a player practises, and the plans of practice that the
-- player took, each as it was made: the rounds that it stood on, whom they were
-- compared with, the engine that judged them, and its figures. What it sets to
-- practise is among the assignments.
alter table players
    add column practice_minutes integer not null default 180,
    add constraint players_practice_minutes_check check (practice_minutes between 60 and 600 and practice_minutes % 5 = 0);

create table practice_plans (
    player_id   bigint not null,
    id          bigint generated always as identity,
    day         date not null,
    first_day   date not null,
    last_day    date not null,
    rounds      integer not null,
    target      double precision not null,
    minutes     integer not null,
    engine      text not null,
    figures     jsonb not null,
    taken_at    timestamptz not null default now(),
    removed_at  timestamptz,
    constraint practice_plans_pkey primary key (player_id, id),
    constraint practice_plans_player_fkey foreign key (player_id) references players (id) on delete cascade
);

alter table assignments
    add column plan_id bigint,
    add column drill text not null default '',
    add column feet double precision not null default 0,
    add constraint assignments_plan_fkey foreign key (player_id, plan_id) references practice_plans (player_id, id) on delete cascade;

-- +goose Down
alter table assignments
    drop constraint assignments_plan_fkey,
    drop column plan_id,
    drop column drill,
    drop column feet;
drop table practice_plans;
alter table players
    drop constraint players_practice_minutes_check,
    drop column practice_minutes;
