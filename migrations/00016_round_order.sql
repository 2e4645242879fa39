-- +goose Up
-- A round begins at any hole and goes on in the order of the card: 18 is
-- followed by 1.
alter table rounds add column first_hole integer not null default 1,
    add constraint rounds_first_hole_check check (first_hole between 1 and 18);

-- When the player was asked for target and units. Who has used an account
-- already has had the time to set them.
alter table players add column greeted_at timestamptz;
update players set greeted_at = now();

-- +goose Down
alter table players drop column greeted_at;
alter table rounds drop column first_hole;
