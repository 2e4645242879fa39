-- +goose Up
create table courses (
    id          bigint generated always as identity,
    owner_id    bigint,
    name        text not null,
    tee         text not null,
    rating      double precision,
    slope       double precision,
    created_at  timestamptz not null default now(),
    constraint courses_pkey primary key (id),
    constraint courses_owner_fkey foreign key (owner_id) references players (id) on delete set null,
    constraint courses_slope_check check (slope between 55 and 155)
);
create index courses_name_idx on courses (lower(name), lower(tee));

create table course_holes (
    course_id     bigint not null,
    number        integer not null,
    par           integer not null,
    length_in     double precision not null,
    stroke_index  integer,
    constraint course_holes_pkey primary key (course_id, number),
    constraint course_holes_course_fkey foreign key (course_id) references courses (id) on delete cascade,
    constraint course_holes_number_check check (number between 1 and 18),
    constraint course_holes_par_check check (par between 3 and 6),
    constraint course_holes_length_check check (length_in > 0)
);

-- +goose Down
drop table course_holes;
drop table courses;
