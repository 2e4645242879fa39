-- +goose Up
-- The units that the numbers of a hole's line are in where the line says none, so
-- that it reads as the same shots whatever the player's setting is now. Lines
-- that are there already were typed in the units of the player's setting, as far
-- as anybody knows.
alter table holes add column far_unit text not null default 'yd', add column green_unit text not null default 'ft';
update holes h set far_unit = p.far_unit, green_unit = p.green_unit from players p where p.id = h.player_id;
alter table holes
    add constraint holes_far_unit_check check (far_unit in ('yd', 'm')),
    add constraint holes_green_unit_check check (green_unit in ('ft', 'm'));

-- +goose Down
alter table holes drop column far_unit, drop column green_unit;
