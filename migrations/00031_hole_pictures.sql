-- What lies on a hole: drawn by any player, kept with its course on every node. The
-- newest version holds; one with an empty picture says that nothing is drawn.
-- +goose Up
create table hole_pictures (
    course_id  bigint not null,
    hole       integer not null,
    version    integer not null,
    drawn_by   bigint,
    drawn_at   timestamptz not null default now(),
    picture    text not null,
    constraint hole_pictures_pkey primary key (course_id, hole, version),
    constraint hole_pictures_course_fkey foreign key (course_id) references courses (id) on delete cascade,
    constraint hole_pictures_drawn_by_fkey foreign key (drawn_by) references players (id) on delete set null,
    constraint hole_pictures_hole_check check (hole between 1 and 18),
    constraint hole_pictures_version_check check (version > 0),
    constraint hole_pictures_size_check check (length(picture) <= 20000)
);
create index hole_pictures_drawn_by_idx on hole_pictures (drawn_by, drawn_at);

-- +goose Down
drop table hole_pictures;
