-- +goose Up
-- A coach may open a pupil's run-out book and start line, and the pupil sees that.
alter table coach_looks drop constraint coach_looks_kind_check;
alter table coach_looks
    add constraint coach_looks_kind_check check (kind in ('months', 'months_file', 'behind', 'handicap', 'rounds', 'lessons', 'report', 'roster', 'squad', 'statement', 'plan', 'run_out', 'start_line'));

-- +goose Down
delete from coach_looks where kind in ('run_out', 'start_line');
alter table coach_looks drop constraint coach_looks_kind_check;
alter table coach_looks
    add constraint coach_looks_kind_check check (kind in ('months', 'months_file', 'behind', 'handicap', 'rounds', 'lessons', 'report', 'roster', 'squad', 'statement', 'plan'));
