-- Whether an account has pupils is asked on every page, so it stands with the
-- account; the statements that change who coaches whom keep it true. A coach sorts
-- pupils into groups of the coach's own and puts away those who pause.
-- +goose Up
alter table players add column teaches boolean not null default false;
-- one by one, since a sharded server does not mix the two tables in a write
-- +goose StatementBegin
do $$
declare coach bigint;
begin
    for coach in select distinct coach_id from coachings where confirmed_at is not null loop
        update players set teaches = true where id = coach;
    end loop;
end
$$;
-- +goose StatementEnd

alter table coachings add column archived_at timestamptz;

create table pupil_groups (
    player_id  bigint not null,
    pupil_id   bigint not null,
    name       text not null,
    constraint pupil_groups_pkey primary key (player_id, pupil_id, name),
    constraint pupil_groups_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint pupil_groups_pupil_fkey foreign key (pupil_id) references players (id) on delete cascade,
    constraint pupil_groups_name_check check (length(name) between 1 and 80),
    constraint pupil_groups_other_check check (player_id <> pupil_id)
);
create index pupil_groups_pupil_idx on pupil_groups (pupil_id);

-- +goose Down
delete from coach_looks where kind = 'overview';
drop table pupil_groups;
alter table coachings drop column archived_at;
alter table players drop column teaches;
