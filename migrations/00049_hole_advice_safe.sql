-- The side of the green that a coach proposes to miss on, if any; empty for none. What a
-- coach removed can be brought back for a while, so of the rows that are not removed
-- there is one at most for a coach and a hole.
-- +goose Up
alter table hole_advice
    add column safe text not null default '',
    add column removed_at timestamptz,
    add constraint hole_advice_safe_check check (safe in ('', 'left', 'right', 'short', 'long')),
    drop constraint hole_advice_coach_key;
create unique index hole_advice_coach_key on hole_advice (player_id, course_id, hole, coach_id) where removed_at is null;

-- +goose Down
delete from hole_advice where removed_at is not null;
drop index hole_advice_coach_key;
alter table hole_advice
    add constraint hole_advice_coach_key unique (player_id, course_id, hole, coach_id),
    drop column removed_at,
    drop column safe;
