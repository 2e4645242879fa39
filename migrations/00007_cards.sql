-- +goose Up
-- The clubs a player carries; the ratings of each nine; the stroke index of a
-- round's holes; and the course of a round whose card is still being told.
alter table players add column clubs text not null default '';
alter table courses add column front_rating double precision;
alter table courses add column front_slope double precision;
alter table courses add column back_rating double precision;
alter table courses add column back_slope double precision;
alter table holes add column stroke_index integer not null default 0;
alter table rounds add column course_id bigint;
alter table rounds add constraint rounds_course_fkey foreign key (course_id) references courses (id) on delete set null;
update course_holes set stroke_index = 0 where stroke_index is null;
alter table course_holes alter column stroke_index set default 0;
alter table course_holes alter column stroke_index set not null;

-- +goose Down
alter table course_holes alter column stroke_index drop not null;
alter table course_holes alter column stroke_index drop default;
alter table rounds drop constraint rounds_course_fkey;
alter table rounds drop column course_id;
alter table holes drop column stroke_index;
alter table courses drop column back_slope;
alter table courses drop column back_rating;
alter table courses drop column front_slope;
alter table courses drop column front_rating;
alter table players drop column clubs;
