-- When a hole of the round was last entered for the first time: a round that was
-- entered since a moment is new, one that was saved again since is changed.
-- +goose Up
alter table rounds add column entered_at timestamptz not null default now();
update rounds set entered_at = created_at;

-- +goose Down
alter table rounds drop column entered_at;
