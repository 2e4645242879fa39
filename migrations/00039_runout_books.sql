-- +goose Up
-- The run-out book of a player as rounds are judged by it: a line for each club and
-- lie with three balls or more. version counts its changes, so that a summary which
-- was made with an earlier book is out of date; the book of a summary is null where
-- no shot of the round depends on one.
create table runout_books (
    player_id  bigint not null,
    version    integer not null,
    lines      jsonb not null,
    constraint runout_books_pkey primary key (player_id),
    constraint runout_books_player_fkey foreign key (player_id) references players (id) on delete cascade
);
alter table round_summaries add column book integer;

-- The books that are there, worked out as analysis/runout does it: with five balls or
-- more whose carries range over 3 yd a straight line that does not fall, otherwise
-- the mean; and 3 yd to either side of the carries that were tried.
insert into runout_books (player_id, version, lines)
select player_id, 1, coalesce(jsonb_agg(jsonb_build_object('club', club, 'lie', lie,
        'start', case when straight then intercept else run end, 'slope', case when straight then slope else 0 end,
        'from', least_carry - 3, 'to', most_carry + 3) order by lie, club) filter (where balls >= 3), '[]'::jsonb)
from (
    select player_id, lie, min(club) as club, count(*) as balls, avg(total - carry) as run, min(carry) as least_carry, max(carry) as most_carry,
        regr_slope(total - carry, carry) as slope, regr_intercept(total - carry, carry) as intercept,
        count(*) >= 5 and max(carry) - min(carry) >= 3 and regr_slope(total - carry, carry) > 0 as straight
    from (
        select player_id, lie, club, carry * yards as carry, total * yards as total
        from (select player_id, lie, club, carry, total, case unit when 'm' then 1 / 0.9144 else 1 end as yards from runout_trials where removed_at is null) measured
    ) trials
    group by player_id, lie, lower(club)
) clubs
group by player_id;
delete from round_summaries where player_id in (select player_id from runout_books);

-- +goose Down
alter table round_summaries drop column book;
drop table runout_books;
