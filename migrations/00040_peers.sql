-- +goose Up
-- What a player's latest rounds come to when other players are set beside them, all
-- together and without a name. Worked out daily; made_for names the engine.
create table peers (
    player_id  bigint not null,
    made_for   text not null,
    level      double precision not null,
    beyond     bytea not null,
    constraint peers_pkey primary key (player_id),
    constraint peers_player_fkey foreign key (player_id) references players (id) on delete cascade
);

-- +goose Down
drop table peers;
