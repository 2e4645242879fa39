-- A round that a coach walked and entered for a pupil, before the pupil has accepted it:
-- holes are the card and what was typed, as a list of objects in the order of the card.
-- It is none of the pupil's rounds; accepting makes one of it, whose entered_by is the
-- name of the coach. It is the coach's alone until it is sent; who removed it, the coach
-- or the pupil who declined it, can bring it back.
-- +goose Up
create table walked_rounds (
    player_id   bigint not null,
    id          bigint generated always as identity,
    coach_id    bigint,
    coach_name  text not null default '',
    played_on   date not null,
    course      text not null,
    tee         text not null default '',
    course_id   bigint,
    par18       integer not null,
    first_hole  integer not null,
    far_unit    text not null,
    green_unit  text not null,
    holes       jsonb not null,
    begun_at    timestamptz not null default now(),
    sent_at     timestamptz,
    removed_at  timestamptz,
    removed_by  bigint,
    constraint walked_rounds_pkey primary key (player_id, id),
    constraint walked_rounds_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint walked_rounds_coach_fkey foreign key (coach_id) references players (id) on delete set null,
    constraint walked_rounds_course_fkey foreign key (course_id) references courses (id) on delete set null
);
create index walked_rounds_coach_idx on walked_rounds (coach_id);
create index walked_rounds_course_idx on walked_rounds (course_id);

alter table rounds add column entered_by text not null default '';

-- +goose Down
alter table rounds drop column entered_by;
drop table walked_rounds;
