-- +goose Up
create table players (
    id             bigint generated always as identity,
    email          text not null,
    name           text not null,
    password_hash  text not null,
    steward        boolean not null default false,
    far_unit       text not null default 'yd',
    green_unit     text not null default 'ft',
    target         double precision not null default 79,
    boundary_yd    double precision not null default 50,
    created_at     timestamptz not null default now(),
    constraint players_pkey primary key (id),
    constraint players_far_unit_check check (far_unit in ('yd', 'm')),
    constraint players_green_unit_check check (green_unit in ('ft', 'm')),
    constraint players_target_check check (target between 68 and 110),
    constraint players_boundary_check check (boundary_yd between 30 and 100)
);
create unique index players_email_key on players (lower(email));

-- A session is found by the player and the hash of its token, both from the
-- cookie, so that a server that shards by player asks one shard.
create table sessions (
    player_id   bigint not null,
    token_hash  bytea not null,
    device      text not null,
    created_at  timestamptz not null default now(),
    seen_at     timestamptz not null default now(),
    constraint sessions_pkey primary key (player_id, token_hash),
    constraint sessions_player_fkey foreign key (player_id) references players (id) on delete cascade
);

create table invitations (
    token_hash  bytea not null,
    made_by     bigint,
    expires_at  timestamptz not null,
    constraint invitations_pkey primary key (token_hash),
    constraint invitations_made_by_fkey foreign key (made_by) references players (id) on delete cascade
);

create table sign_in_failures (
    email_hash  bytea not null,
    at          timestamptz not null default now()
);
create index sign_in_failures_email_hash_at_idx on sign_in_failures (email_hash, at);

-- +goose Down
drop table sign_in_failures;
drop table invitations;
drop table sessions;
drop table players;
