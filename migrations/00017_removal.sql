-- +goose Up
-- What is removed stays for a while, to be brought back.
alter table rounds rename column deleted_at to removed_at;
alter table notes add column removed_at timestamptz;
alter table note_replies add column removed_at timestamptz;
alter table assignments add column removed_at timestamptz;
alter table assignment_results add column removed_at timestamptz;

-- +goose Down
delete from assignment_results where removed_at is not null;
delete from assignments where removed_at is not null;
delete from note_replies where removed_at is not null;
delete from notes where removed_at is not null;
alter table assignment_results drop column removed_at;
alter table assignments drop column removed_at;
alter table note_replies drop column removed_at;
alter table notes drop column removed_at;
alter table rounds rename column removed_at to deleted_at;
