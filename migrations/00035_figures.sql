-- The figure that a practice is to move, as an address of the months writes it;
-- empty for none.
-- +goose Up
alter table assignments add column figure text not null default '';
alter table assignments add constraint assignments_figure_check check (length(figure) <= 60);

-- +goose Down
alter table assignments drop column figure;
