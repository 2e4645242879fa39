-- +goose Up
-- Who may see a player's rounds. A pupil makes a link, a coach accepts by it,
-- and the pupil confirms the coach by name; shared_from is the first day that
-- the coach sees, null for everything.
create table coach_invitations (
    player_id    bigint not null,
    token_hash   bytea not null,
    shared_from  date,
    expires_at   timestamptz not null,
    constraint coach_invitations_pkey primary key (player_id, token_hash),
    constraint coach_invitations_player_fkey foreign key (player_id) references players (id) on delete cascade
);

create table coachings (
    player_id     bigint not null,
    coach_id      bigint not null,
    shared_from   date,
    accepted_at   timestamptz not null default now(),
    confirmed_at  timestamptz,
    looked_at     timestamptz,
    constraint coachings_pkey primary key (player_id, coach_id),
    constraint coachings_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint coachings_coach_fkey foreign key (coach_id) references players (id) on delete cascade,
    constraint coachings_other_check check (player_id <> coach_id)
);
create index coachings_coach_idx on coachings (coach_id);

-- The first day of a player's that asker may see: null, which no day is after,
-- without access.
-- +goose StatementBegin
create function leave_from(asker bigint, player bigint) returns date language sql stable as $$
    select case when asker = player then '-infinity'::date
           else (select coalesce(c.shared_from, '-infinity'::date) from coachings c
                 where c.player_id = player and c.coach_id = asker and c.confirmed_at is not null) end
$$;
-- +goose StatementEnd

-- +goose Down
drop function leave_from(bigint, bigint);
drop table coachings;
drop table coach_invitations;
