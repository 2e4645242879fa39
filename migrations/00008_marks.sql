-- +goose Up
-- Days that a player marks, a lesson or a new driver, to compare before and after.
create table marks (
    player_id  bigint not null,
    id         bigint generated always as identity,
    marked_on  date not null,
    what       text not null,
    constraint marks_pkey primary key (player_id, id),
    constraint marks_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint marks_what_check check (length(what) between 1 and 80)
);

-- +goose Down
drop table marks;
