package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// LookKind is a kind of page that a coach opens.
type LookKind string

// The kinds of pages. A statement is of a round; the others are of the pupil.
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
)

// visitGap is after how long without a look a coach's next one begins another
// visit.
const visitGap = "3 hours"

// NoteLook notes for a pupil that a coach opens a page that there is; about is
// the round of a statement, and 0 otherwise. Not found says that who asks is not
// the pupil's coach, or no longer.
func (s *Store) NoteLook(ctx context.Context, coach, pupil golf.PlayerID, kind LookKind, about golf.RoundID) error {
	return changeOne(ctx, s.q, `
		with looked as (
			update coachings set looked_at = now(),
				before_at = case when looked_at < now() - interval '`+visitGap+`' then looked_at else before_at end
			where player_id = @pupil and coach_id = @coach and confirmed_at is not null
			returning player_id, coach_id
		)
		insert into coach_looks (player_id, coach_id, day, kind, about, name)
		select l.player_id, l.coach_id, current_date, @kind, @about, c.name from looked l join players c on c.id = l.coach_id
		on conflict (player_id, coach_id, day, kind, about) do update set times = coach_looks.times + 1, last_at = now(), name = excluded.name`,
		pgx.StrictNamedArgs{"coach": coach, "pupil": pupil, "kind": kind, "about": about})
}

// VisitBefore returns when the coach's visit before the present one to a pupil
// ended, nil when there was none.
func (s *Store) VisitBefore(ctx context.Context, coach, pupil golf.PlayerID) (*time.Time, error) {
	return one(ctx, s.q, pgx.RowTo[*time.Time], `select before_at from coachings where player_id = @pupil and coach_id = @coach and confirmed_at is not null`,
		pgx.StrictNamedArgs{"coach": coach, "pupil": pupil})
}

// Look is what a coach opened on a day of one kind of page.
type Look struct {
	CoachID golf.PlayerID
	Day     time.Time
	Name    string // the coach's
	Kind    LookKind
	Times   int
	LastAt  time.Time
	Rounds  []LookedRound `db:"-"` // of statements, the latest look first
}

// LookedRound is a round whose statement a coach opened.
type LookedRound struct {
	ID       golf.RoundID
	Times    int
	PlayedOn *time.Time // nil when the round is gone for good
	Course   *string
	Removed  bool
}

// Looks lists what of the player's was opened by coaches, a line a day, coach
// and kind of page, the latest first; skip passes over lines.
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
