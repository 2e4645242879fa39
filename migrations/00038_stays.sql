-- What was shared stays with the pupil after the coach's account has gone: author_name
-- is the name of an author whose account was deleted. What a coach kept private stays
-- with the coach after the pupil's account has gone: in kept_notes, player_id is the
-- coach and pupil the name of the player whom the note is about.
-- +goose Up
alter table notes add column author_name text not null default '', alter column author_id drop not null, drop constraint notes_author_fkey;
alter table notes add constraint notes_author_fkey foreign key (author_id) references players (id) on delete set null;
alter table note_replies add column author_name text not null default '', alter column author_id drop not null, drop constraint note_replies_author_fkey;
alter table note_replies add constraint note_replies_author_fkey foreign key (author_id) references players (id) on delete set null;
alter table assignments add column author_name text not null default '';

create table kept_notes (
    player_id   bigint not null,
    id          bigint generated always as identity,
    pupil       text not null,
    kind        text not null,
    day         date not null,
    hole        integer,
    shot        integer,
    body        text not null,
    written_at  timestamptz not null,
    edited_at   timestamptz,
    removed_at  timestamptz,
    constraint kept_notes_pkey primary key (player_id, id),
    constraint kept_notes_player_fkey foreign key (player_id) references players (id) on delete cascade
);

-- +goose Down
drop table kept_notes;
alter table assignments drop column author_name;
delete from note_replies where author_id is null;
alter table note_replies drop constraint note_replies_author_fkey, alter column author_id set not null, drop column author_name;
alter table note_replies add constraint note_replies_author_fkey foreign key (author_id) references players (id) on delete cascade;
delete from notes where author_id is null;
alter table notes drop constraint notes_author_fkey, alter column author_id set not null, drop column author_name;
alter table notes add constraint notes_author_fkey foreign key (author_id) references players (id) on delete cascade;
