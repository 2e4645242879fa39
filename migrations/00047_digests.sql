-- Mail about new notices, for an account that has chosen it: every is how often, due_at
-- when the next letter is to go, or be tried again, and tries how often it was tried in
-- vain. token stands in every letter, so it is kept as it is: it is good for nothing but
-- ending the mail. mailed_at is when a notice was in a letter, or was older than the
-- choice of them.
-- +goose Up
create table digests (
    player_id  bigint not null,
    every      text not null,
    token      text not null,
    due_at     timestamptz not null,
    tries      integer not null default 0,
    constraint digests_pkey primary key (player_id),
    constraint digests_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint digests_every_check check (every in ('daily', 'weekly'))
);
create index digests_due_at_idx on digests (due_at);
alter table notices add column mailed_at timestamptz;

-- +goose Down
alter table notices drop column mailed_at;
drop table digests;
