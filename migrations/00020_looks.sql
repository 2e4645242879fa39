-- +goose Up
-- What a coach opened is a kind of page and, for a statement, the number of the
-- round. Addresses were kept as they were asked for, those without a page too:
-- lines of pages and of rounds that there are stay, the others tell of nothing
-- that was seen.
alter table coach_looks add column kind text, add column about bigint not null default 0;
update coach_looks set kind = case page
    when '/months' then 'months'
    when '/months.csv' then 'months_file'
    when '/months/behind' then 'behind'
    when '/handicap' then 'handicap'
    when '/rounds' then 'rounds'
    when '/lessons' then 'lessons'
    when '/report' then 'report'
    when '/coaching' then 'roster'
    when '/coaching/squad' then 'squad' end;
update coach_looks l set kind = 'statement', about = r.id from rounds r where r.player_id = l.player_id and l.page = '/rounds/' || r.id;
delete from coach_looks where kind is null;
alter table coach_looks drop constraint coach_looks_pkey;
alter table coach_looks drop column page;
alter table coach_looks alter column kind set not null,
    add constraint coach_looks_pkey primary key (player_id, coach_id, day, kind, about),
    add constraint coach_looks_kind_check check (kind in ('months', 'months_file', 'behind', 'handicap', 'rounds', 'lessons', 'report', 'roster', 'squad', 'statement')),
    add constraint coach_looks_about_check check ((about > 0) = (kind = 'statement'));

-- +goose Down
alter table coach_looks add column page text;
update coach_looks set page = case kind
    when 'months' then '/months'
    when 'months_file' then '/months.csv'
    when 'behind' then '/months/behind'
    when 'handicap' then '/handicap'
    when 'rounds' then '/rounds'
    when 'lessons' then '/lessons'
    when 'report' then '/report'
    when 'roster' then '/coaching'
    when 'squad' then '/coaching/squad'
    else '/rounds/' || about end;
alter table coach_looks drop constraint coach_looks_pkey, drop constraint coach_looks_kind_check, drop constraint coach_looks_about_check;
alter table coach_looks drop column kind, drop column about;
alter table coach_looks alter column page set not null,
    add constraint coach_looks_pkey primary key (player_id, coach_id, day, page);
