-- A player's days are those of the player's own time zone, by its name in the tz
-- database; an empty one means the server's.
-- +goose Up
alter table players add column zone text not null default '',
    add constraint players_zone_check check (length(zone) <= 64);

-- +goose Down
alter table players drop constraint players_zone_check, drop column zone;
