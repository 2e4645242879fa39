-- +goose Up
-- What came of a drill on a day. entered_as is made by the page on which a session
-- is entered, so that a save that is sent twice is stored once. tries are the tries
-- in order, a letter each, where the drill asks for them; counted and tried are by
-- station. feet is 0 for a drill whose distance is not the player's choice.
create table drill_sessions (
    player_id    bigint not null,
    id           bigint generated always as identity,
    entered_as   text not null,
    drill        text not null,
    name         text not null,
    day          date not null,
    feet         double precision not null default 0,
    tries        text not null default '',
    counted      integer[] not null default '{}',
    tried        integer[] not null default '{}',
    minutes      integer not null default 0,
    note         text not null default '',
    recorded_at  timestamptz not null default now(),
    removed_at   timestamptz,
    constraint drill_sessions_pkey primary key (player_id, id),
    constraint drill_sessions_entered_key unique (player_id, entered_as),
    constraint drill_sessions_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint drill_sessions_minutes_check check (minutes between 0 and 600),
    constraint drill_sessions_counts_check check (cardinality(counted) = cardinality(tried))
);

-- +goose Down
drop table drill_sessions;
