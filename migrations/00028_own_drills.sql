-- +goose Up
-- A drill of a coach's own, written down with the practice that it is set as: how to
-- set it up, how many tries, and how many must count. No model stands behind it.
alter table assignments
    add column set_up text not null default '',
    add column tries integer not null default 0,
    add column mark integer not null default 0,
    add constraint assignments_tries_check check (tries between 0 and 200 and mark between 0 and tries);

-- +goose Down
alter table assignments
    drop constraint assignments_tries_check,
    drop column set_up,
    drop column tries,
    drop column mark;
