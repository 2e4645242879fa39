-- What happened between a coach and a pupil, for the other to hear of: one list an
-- account. player_id is who is told, by_id who did it, of_id whose pages it is about.
-- +goose Up
create table notices (
    player_id   bigint not null,
    id          bigint generated always as identity,
    kind        text not null,
    by_name     text not null,
    of_id       bigint not null,
    round_id    bigint,
    note_id     bigint,
    what        text not null default '',
    told_at     timestamptz not null default now(),
    read_at     timestamptz,
    constraint notices_pkey primary key (player_id, id),
    constraint notices_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint notices_kind_check check (kind ~ '^[a-z_]+$'),
    constraint notices_what_check check (length(what) <= 200)
);
create index notices_told_at_idx on notices (player_id, told_at desc);

-- +goose Down
drop table notices;
