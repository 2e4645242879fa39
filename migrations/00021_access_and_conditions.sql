-- The first day that a coach may see is worked out in each statement: a server
-- that shards by player cannot call our function on a shard. And what is noted of
-- a round's weather and greens gets its usual name; notes are what people write
-- to each other.
-- +goose Up
drop function leave_from(bigint, bigint);
alter table rounds rename column note to conditions;

-- +goose Down
alter table rounds rename column conditions to note;
-- +goose StatementBegin
create function leave_from(asker bigint, player bigint) returns date language sql stable as $$
    select case when asker = player then '-infinity'::date
           else (select coalesce(c.shared_from, '-infinity'::date) from coachings c
                 where c.player_id = player and c.coach_id = asker and c.confirmed_at is not null) end
$$;
-- +goose StatementEnd
