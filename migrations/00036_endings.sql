-- A link that was used or withdrawn can say so, and an access that has ended can be
-- taken up again for a day by who ended it.
-- +goose Up
alter table coach_invitations
    add column used_at timestamptz,
    add column used_by bigint,
    add column revoked_at timestamptz;

create table ended_coachings (
    player_id     bigint not null,
    coach_id      bigint not null,
    shared_from   date,
    accepted_at   timestamptz not null,
    confirmed_at  timestamptz,
    looked_at     timestamptz,
    before_at     timestamptz,
    archived_at   timestamptz,
    ended_at      timestamptz not null default now(),
    ended_by      bigint not null,
    constraint ended_coachings_pkey primary key (player_id, coach_id),
    constraint ended_coachings_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint ended_coachings_coach_fkey foreign key (coach_id) references players (id) on delete cascade
);
create index ended_coachings_coach_idx on ended_coachings (coach_id);

-- +goose Down
drop table ended_coachings;
delete from coach_invitations where used_at is not null or revoked_at is not null;
alter table coach_invitations drop column used_at, drop column used_by, drop column revoked_at;
