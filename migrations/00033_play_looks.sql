-- +goose Up
-- A coach may open a pupil's plan of a round, and the pupil sees that. The kinds of
-- pages are listed where they are written, so that a new page needs no migration.
alter table coach_looks drop constraint coach_looks_kind_check;
alter table coach_looks add constraint coach_looks_kind_check check (kind ~ '^[a-z_]+$');

-- +goose Down
delete from coach_looks where kind not in ('months', 'months_file', 'behind', 'handicap', 'rounds', 'lessons', 'report', 'roster', 'squad', 'statement', 'plan', 'run_out', 'start_line');
alter table coach_looks drop constraint coach_looks_kind_check;
alter table coach_looks
    add constraint coach_looks_kind_check check (kind in ('months', 'months_file', 'behind', 'handicap', 'rounds', 'lessons', 'report', 'roster', 'squad', 'statement', 'plan', 'run_out', 'start_line'));
