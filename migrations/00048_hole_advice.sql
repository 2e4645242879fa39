-- What a coach says of a hole on a course, and the club and aim that the coach proposes
-- for it; yards, right of the middle or the flag, and beyond the flag. A pupil who took
-- the proposal plays it in place of the best aim. coach_name is the name of a coach
-- whose account was deleted. A notice may be about a hole.
-- +goose Up
create table hole_advice (
    player_id    bigint not null,
    id           bigint generated always as identity,
    course_id    bigint not null,
    hole         integer not null,
    coach_id     bigint,
    coach_name   text not null default '',
    note         text not null,
    proposes     boolean not null,
    club         text not null,
    side_yd      double precision not null,
    long_yd      double precision not null,
    answer       text not null default '',
    written_at   timestamptz not null default now(),
    answered_at  timestamptz,
    constraint hole_advice_pkey primary key (player_id, id),
    constraint hole_advice_coach_key unique (player_id, course_id, hole, coach_id),
    constraint hole_advice_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint hole_advice_coach_fkey foreign key (coach_id) references players (id) on delete set null,
    constraint hole_advice_course_fkey foreign key (course_id) references courses (id) on delete cascade,
    constraint hole_advice_hole_check check (hole between 1 and 18),
    constraint hole_advice_note_check check (length(note) <= 500),
    constraint hole_advice_aim_check check (side_yd between -60 and 60 and long_yd between -30 and 30),
    constraint hole_advice_answer_check check (answer in ('', 'taken', 'declined'))
);
create index hole_advice_coach_idx on hole_advice (coach_id);
create index hole_advice_course_idx on hole_advice (course_id);

alter table notices add column course_id bigint, add column hole integer;

-- +goose Down
delete from notices where kind like 'hole_%';
alter table notices drop column course_id, drop column hole;
drop table hole_advice;
