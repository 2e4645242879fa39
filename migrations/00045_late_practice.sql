-- Practice whose day has passed is told of once: late_at is when that was. A notice
-- may lead to the practice that it is about, and names the day that has passed. What
-- was late long before this step is not told of.
-- +goose Up
alter table assignments add column late_at timestamptz;
update assignments set late_at = given_at where due_on < current_date - 14;
create index assignments_late_idx on assignments (due_on) where late_at is null and done_at is null and removed_at is null;
alter table notices add column practice_id bigint, add column on_day date;

-- +goose Down
alter table notices drop column practice_id, drop column on_day;
alter table assignments drop column late_at;
