-- A removed course stays for a while, so that it can come back. A course whose
-- holes are described while playing knows how many it will have; 0 is as many
-- as are described.
-- +goose Up
alter table courses add column removed_at timestamptz;
alter table courses add column holes_planned integer not null default 0;
alter table courses add constraint courses_planned_check check (holes_planned between 0 and 18);

-- +goose Down
alter table courses drop constraint courses_planned_check;
alter table courses drop column holes_planned;
delete from courses where removed_at is not null;
alter table courses drop column removed_at;
