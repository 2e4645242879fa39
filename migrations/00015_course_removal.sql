-- A removed course stays for a while, so that it can come back. A course whose
-- holes are described while playing knows how many it will have; 0 is as many
-- as are described.
-- +goose Up
alter table courses add column removed_at timestamptz;
alter table courses add column holes_planned integer not null default 0;
alter table courses add constraint courses_planned_check check (holes_planned between 0 and 18);
-- courses that are being described have as many holes as a round on them
update courses c set holes_planned = n.holes
from (
    select r.course_id, max(h.number) as holes
    from rounds r join holes h on h.player_id = r.player_id and h.round_id = r.id
    where r.course_id is not null group by r.course_id
) n
where n.course_id = c.id and n.holes > (select count(*) from course_holes ch where ch.course_id = c.id);

-- +goose Down
alter table courses drop constraint courses_planned_check;
alter table courses drop column holes_planned;
delete from courses where removed_at is not null;
alter table courses drop column removed_at;
