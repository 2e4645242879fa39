-- +goose Up
-- A coach may open a pupil's plan of practice, and the pupil sees that.
alter table coach_looks drop constraint coach_looks_kind_check;
alter table coach_looks
    add constraint coach_looks_kind_check check (kind in ('months', 'months_file', 'behind', 'handicap', 'rounds', 'lessons', 'report', 'roster', 'squad', 'statement', 'plan'));

-- +goose Down
delete from coach_looks where kind = 'plan';
alter table coach_looks drop constraint coach_looks_kind_check;
alter table coach_looks
    add constraint coach_looks_kind_check check (kind in ('months', 'months_file', 'behind', 'handicap', 'rounds', 'lessons', 'report', 'roster', 'squad', 'statement'));
