-- +goose Up
-- What coach and pupil write to each other: a note on a round, a hole or a shot,
-- a lesson note on a day, a question of the pupil's. A private note is its
-- writer's alone. day is that of the round or of the lesson: a coach who is let
-- in from a day on sees none from before it.
create table notes (
    player_id   bigint not null,
    id          bigint generated always as identity,
    author_id   bigint not null,
    kind        text not null,
    private     boolean not null default false,
    day         date not null,
    round_id    bigint,
    hole        integer,
    shot        integer,
    body        text not null,
    written_at  timestamptz not null default now(),
    edited_at   timestamptz,
    constraint notes_pkey primary key (player_id, id),
    constraint notes_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint notes_author_fkey foreign key (author_id) references players (id) on delete cascade,
    constraint notes_round_fkey foreign key (player_id, round_id) references rounds (player_id, id) on delete cascade,
    constraint notes_kind_check check (kind in ('note', 'question', 'lesson')),
    constraint notes_question_check check (kind <> 'question' or author_id = player_id),
    constraint notes_lesson_check check ((kind = 'lesson') = (round_id is null)),
    constraint notes_place_check check (shot is null or hole is not null),
    constraint notes_private_check check (not private or author_id <> player_id)
);
create index notes_round_idx on notes (player_id, round_id);
create index notes_author_idx on notes (author_id);

create table note_replies (
    player_id   bigint not null,
    note_id     bigint not null,
    id          bigint generated always as identity,
    author_id   bigint not null,
    body        text not null,
    written_at  timestamptz not null default now(),
    constraint note_replies_pkey primary key (player_id, note_id, id),
    constraint note_replies_note_fkey foreign key (player_id, note_id) references notes (player_id, id) on delete cascade,
    constraint note_replies_author_fkey foreign key (author_id) references players (id) on delete cascade
);
create index note_replies_author_idx on note_replies (author_id);

create table note_reads (
    player_id  bigint not null,
    note_id    bigint not null,
    reader_id  bigint not null,
    read_at    timestamptz not null default now(),
    constraint note_reads_pkey primary key (player_id, note_id, reader_id),
    constraint note_reads_note_fkey foreign key (player_id, note_id) references notes (player_id, id) on delete cascade,
    constraint note_reads_reader_fkey foreign key (reader_id) references players (id) on delete cascade
);
create index note_reads_reader_idx on note_reads (reader_id);

-- +goose Down
drop table note_reads;
drop table note_replies;
drop table notes;
