-- +goose Up
-- What a round comes to, kept so that a coach's pupils can be looked over at
-- once. made_for names the engine that worked it out; the line goes whenever
-- the round is saved, and one made for something else counts as missing.
create table round_summaries (
    player_id  bigint not null,
    round_id   bigint not null,
    made_for   text not null,
    summary    bytea not null,
    constraint round_summaries_pkey primary key (player_id, round_id),
    constraint round_summaries_round_fkey foreign key (player_id, round_id) references rounds (player_id, id) on delete cascade
);
alter table round_summaries alter column summary set storage plain;

-- When a hole of the round was last saved, so that a coach sees what is new.
alter table rounds add column changed_at timestamptz not null default now();
update rounds set changed_at = created_at;

-- +goose Down
alter table rounds drop column changed_at;
drop table round_summaries;
