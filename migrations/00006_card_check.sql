-- +goose Up
-- What the card says of each nine, to check the holes by; and a word of the
-- player's own on a shot.
alter table rounds add column card_out integer not null default 0;
alter table rounds add column card_in integer not null default 0;
alter table shots add column word text not null default '';

-- +goose Down
alter table shots drop column word;
alter table rounds drop column card_in;
alter table rounds drop column card_out;
