-- +goose Up
-- What a pupil is to practise: how much, what counts as passed, by when; and
-- what came of it. It stays with the pupil when who gave it is gone.
create table assignments (
    player_id  bigint not null,
    id         bigint generated always as identity,
    author_id  bigint,
    what       text not null,
    amount     text not null,
    pass_mark  text not null,
    due_on     date not null,
    given_at   timestamptz not null default now(),
    done_at    timestamptz,
    constraint assignments_pkey primary key (player_id, id),
    constraint assignments_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint assignments_author_fkey foreign key (author_id) references players (id) on delete set null
);
create index assignments_author_idx on assignments (author_id);

create table assignment_results (
    player_id      bigint not null,
    assignment_id  bigint not null,
    id             bigint generated always as identity,
    day            date not null,
    result         text not null,
    passed         boolean not null,
    recorded_at    timestamptz not null default now(),
    constraint assignment_results_pkey primary key (player_id, assignment_id, id),
    constraint assignment_results_assignment_fkey foreign key (player_id, assignment_id) references assignments (player_id, id) on delete cascade
);

-- A target that a coach proposes; the pupil accepts or declines it.
create table target_proposals (
    player_id    bigint not null,
    coach_id     bigint not null,
    target       double precision not null,
    proposed_at  timestamptz not null default now(),
    constraint target_proposals_pkey primary key (player_id, coach_id),
    constraint target_proposals_player_fkey foreign key (player_id) references players (id) on delete cascade,
    constraint target_proposals_coach_fkey foreign key (coach_id) references players (id) on delete cascade,
    constraint target_proposals_target_check check (target between 68 and 110)
);

-- +goose Down
drop table target_proposals;
drop table assignment_results;
drop table assignments;
