-- A coach has a code, null while it is turned off. A pupil who types it asks to be
-- coached from a day on (null for everything), and sees by name and address whom; in
-- coach_requests player_id is that pupil. It becomes access once the coach says yes too.
-- +goose Up
alter table players add column coach_code text;
create unique index players_coach_code_key on players (coach_code);

create table coach_requests (
    player_id    bigint not null,
    coach_id     bigint not null,
    shared_from  date,
    asked_at     timestamptz not null default now(),
    constraint coach_requests_pkey primary key (player_id, coach_id),
    constraint coach_requests_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint coach_requests_coach_fkey foreign key (coach_id) references players (id) on delete cascade,
    constraint coach_requests_other_check check (player_id <> coach_id)
);
create index coach_requests_coach_idx on coach_requests (coach_id);

-- +goose Down
drop table coach_requests;
drop index players_coach_code_key;
alter table players drop column coach_code;
