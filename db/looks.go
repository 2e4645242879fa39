package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// LookKind is a kind of page that a coach can open.
type LookKind string

// The kinds of pages. A statement is about a round; the others are about the pupil.
const (
	LookMonths     LookKind = "months"
	LookMonthsFile LookKind = "months_file"
	LookBehind     LookKind = "behind"
	LookHandicap   LookKind = "handicap"
	LookRounds     LookKind = "rounds"
	LookLessons    LookKind = "lessons"
	LookReport     LookKind = "report"
	LookRoster     LookKind = "roster"
	LookSquad      LookKind = "squad"
	LookStatement  LookKind = "statement"
	LookPlan       LookKind = "plan"
	LookRunOut     LookKind = "run_out"
	LookStartLine  LookKind = "start_line"
	LookPlay       LookKind = "play"
	LookOverview   LookKind = "overview"
	LookBeside     LookKind = "beside"
)

// visitGap is how long a coach opens nothing before the next look counts as another
// visit.
const visitGap = "3 hours"

// Opened is a page that a coach opened.
type Opened struct {
	Kind  LookKind
	Round golf.RoundID // of a statement, 0 for the other kinds
	Day   golf.Date    // where the pupil is
	At    time.Time
}

// RecordLook records, for the pupil to read, that a coach opened a page. It returns
// golf.ErrNotFound when coach has no access to the pupil.
func (s *Store) RecordLook(ctx context.Context, coach, pupil golf.PlayerID, page Opened) error {
	batch := &pgx.Batch{}
	of := pgx.StrictNamedArgs{"coach": coach, "pupil": pupil}
	batch.Queue(`
		update coachings set before_at = looked_at
		where player_id = @pupil and coach_id = @coach and confirmed_at is not null and looked_at < now() - interval '`+visitGap+`'`, of)
	batch.Queue(`update coachings set looked_at = now() where player_id = @pupil and coach_id = @coach and confirmed_at is not null`, of)
	batch.Queue(`
		insert into coach_looks (player_id, coach_id, day, kind, about, name, last_at)
		select c.player_id, c.coach_id, @day::date, @kind, @about::bigint, p.name, @at from coachings c join players p on p.id = c.coach_id
		where c.player_id = @pupil and c.coach_id = @coach and c.confirmed_at is not null
		on conflict (player_id, coach_id, day, kind, about) do update set times = coach_looks.times + 1, last_at = excluded.last_at, name = excluded.name`,
		pgx.StrictNamedArgs{"coach": coach, "pupil": pupil, "kind": page.Kind, "about": page.Round, "day": day(page.Day), "at": page.At})
	return changeAll(ctx, s.q, batch)
}

// VisitBefore returns when the coach's previous visit to a pupil ended, nil when
// there was none.
func (s *Store) VisitBefore(ctx context.Context, coach, pupil golf.PlayerID) (*time.Time, error) {
	return one(ctx, s.q, pgx.RowTo[*time.Time], `select before_at from coachings where player_id = @pupil and coach_id = @coach and confirmed_at is not null`,
		pgx.StrictNamedArgs{"coach": coach, "pupil": pupil})
}

// Look counts how often a coach opened one kind of page on a day.
type Look struct {
	CoachID golf.PlayerID
	Day     time.Time
	Name    string // of the coach
	Kind    LookKind
	Times   int
	LastAt  time.Time
	Rounds  []LookedRound `db:"-"` // of statements, the latest look first
}

// LookedRound is a round whose statement a coach opened.
type LookedRound struct {
	ID       golf.RoundID
	Times    int
	PlayedOn *time.Time // nil when the round was deleted for good
	Course   *string
	Removed  bool
}

// Looks lists what coaches opened of the player's pages, the latest first: one Look
// for each day, coach and kind. The first skip of them are left out.
func (s *Store) Looks(ctx context.Context, who golf.PlayerID, skip, most int) ([]Look, error) {
	all, err := many(ctx, s.q, pgx.RowToStructByName[Look], `
		select coach_id, day, (array_agg(name order by last_at desc))[1] as name, kind, sum(times)::int as times, max(last_at) as last_at
		from coach_looks where player_id = @who group by coach_id, day, kind order by max(last_at) desc, coach_id, kind offset @skip limit @most`,
		pgx.StrictNamedArgs{"who": who, "skip": skip, "most": most})
	if err != nil {
		return nil, err
	}
	for i, l := range all {
		if l.Kind != LookStatement {
			continue
		}
		all[i].Rounds, err = many(ctx, s.q, pgx.RowToStructByName[LookedRound], `
			select l.about as id, l.times, r.played_on, r.course, r.removed_at is not null as removed
			from coach_looks l left join rounds r on r.player_id = l.player_id and r.id = l.about
			where l.player_id = @who and l.coach_id = @coach and l.day = @day and l.kind = @kind order by l.last_at desc, l.about`,
			pgx.StrictNamedArgs{"who": who, "coach": l.CoachID, "day": l.Day, "kind": l.Kind})
		if err != nil {
			return nil, err
		}
	}
	return all, nil
}
