-- A letter about notices from when it is written until it is known that the mail server
-- took it or refused it. One that is still here when mail is tried again is sent again
-- as it is: same identifier, date and text, so that a mailbox knows it for the same.
-- +goose Up
create table digest_letters (
    player_id   bigint not null,
    id          text not null,
    subject     text not null,
    body        text not null,
    written_at  timestamptz not null,
    notices     bigint[] not null,
    constraint digest_letters_pkey primary key (player_id),
    constraint digest_letters_player_fkey foreign key (player_id) references players (id) on delete cascade
);

-- +goose Down
drop table digest_letters;
