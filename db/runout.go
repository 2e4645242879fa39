package db

import (
	"context"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Trial is a ball of a player's run-out book.
type Trial struct {
	ID    int64
	Day   time.Time
	Club  string
	Lie   string
	Green string // how fast it was
	Carry float64
	Total float64
	Unit  string // of the two lengths
}

// Trial is the ball as the engine takes it.
func (t Trial) Trial() (golf.Trial, error) {
	lie, badLie := golf.ParseLie(t.Lie)
	speed, badSpeed := golf.ParseGreenSpeed(t.Green)
	unit, badUnit := golf.ParseTrialUnit(t.Unit)
	return golf.Trial{Club: t.Club, Lie: lie, Speed: speed, Carry: t.Carry, Total: t.Total, Unit: unit}, errors.Join(badLie, badSpeed, badUnit)
}

// ErrFull says that a player has as many of something as there may be.
var ErrFull = errors.New("full")

// Ball is a ball with the day on which it was measured.
type Ball struct {
	Day golf.Date
	golf.Trial
}

// NewTrials adds balls to the player's run-out book. enteredAs is made by the page on
// which they were entered; the same page stores them once. A book of more than
// golf.MaxTrials is ErrFull.
func (s *Store) NewTrials(ctx context.Context, who golf.PlayerID, day golf.Date, enteredAs string, trials []golf.Trial, remake MakeRunBook) error {
	balls := make([]Ball, len(trials))
	for i, t := range trials {
		balls[i] = Ball{day, t}
	}
	return s.changeTrials(ctx, who, remake, func(tx *Store) error { return tx.addBalls(ctx, who, enteredAs, balls) })
}

// addBalls adds balls to the player's book.
func (s *Store) addBalls(ctx context.Context, who golf.PlayerID, enteredAs string, balls []Ball) error {
	batch := &pgx.Batch{}
	for i, t := range balls {
		batch.Queue(`
			insert into runout_trials (player_id, entered_as, place, club, lie, green, carry, total, unit, day)
			values (@who, @entered, @place, @club, @lie, @green, @carry, @total, @unit, @day)
			on conflict (player_id, entered_as, place) do nothing`,
			pgx.StrictNamedArgs{"who": who, "entered": enteredAs, "place": i + 1, "club": t.Club, "lie": t.Lie.String(), "green": t.Speed.String(),
				"carry": t.Carry, "total": t.Total, "unit": t.Unit.String(), "day": t.Day.Time()})
	}
	if err := s.q.SendBatch(ctx, batch).Close(); err != nil {
		return translate(err)
	}
	return s.roomForTrials(ctx, who)
}

// roomForTrials returns ErrFull when the player's book has more balls than it may.
func (s *Store) roomForTrials(ctx context.Context, who golf.PlayerID) error {
	n, err := one(ctx, s.q, pgx.RowTo[int], `select count(*)::int from runout_trials where player_id = @who and removed_at is null`, pgx.StrictNamedArgs{"who": who})
	if err == nil && n > golf.MaxTrials {
		err = ErrFull
	}
	return err
}

// TakeBalls adds those balls of a file that the player's book does not hold yet. Two
// that are alike are two, so that only as many are added as are missing. A book that
// would have more than golf.MaxTrials is ErrFull.
func (s *Store) TakeBalls(ctx context.Context, who golf.PlayerID, enteredAs string, balls []Ball, remake MakeRunBook) error {
	return s.changeTrials(ctx, who, remake, func(tx *Store) error {
		kept, err := tx.Trials(ctx, who, who)
		if err != nil {
			return err
		}
		held := map[Ball]int{}
		for _, k := range kept {
			t, err := k.Trial()
			if err != nil {
				return err
			}
			held[Ball{golf.DateOf(k.Day), t}]++
		}
		var missing []Ball
		for _, b := range balls {
			if held[b]--; held[b] < 0 {
				missing = append(missing, b)
			}
		}
		return tx.addBalls(ctx, who, enteredAs, missing)
	})
}

// Trials lists the balls of the player's run-out book that asker may see, the
// earliest first.
func (s *Store) Trials(ctx context.Context, asker, who golf.PlayerID) ([]Trial, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Trial], `
		select id, day, club, lie, green, carry, total, unit from runout_trials
		where player_id = @who and removed_at is null and day >= `+accessFrom("@asker", "@who")+`
		order by day, recorded_at, place, id`,
		pgx.StrictNamedArgs{"asker": asker, "who": who})
}

// RemoveTrial removes a ball from the player's book.
func (s *Store) RemoveTrial(ctx context.Context, who golf.PlayerID, id int64, remake MakeRunBook) error {
	return s.changeTrials(ctx, who, remake, func(tx *Store) error {
		return changeOne(ctx, tx.q, `update runout_trials set removed_at = now() where player_id = @who and id = @id and removed_at is null`,
			pgx.StrictNamedArgs{"who": who, "id": id})
	})
}

// RestoreTrial brings it back. A book that would have more than golf.MaxTrials is
// ErrFull.
func (s *Store) RestoreTrial(ctx context.Context, who golf.PlayerID, id int64, remake MakeRunBook) error {
	return s.changeTrials(ctx, who, remake, func(tx *Store) error {
		if err := changeOne(ctx, tx.q, `update runout_trials set removed_at = null where player_id = @who and id = @id and `+back,
			pgx.StrictNamedArgs{"who": who, "id": id}); err != nil {
			return err
		}
		return tx.roomForTrials(ctx, who)
	})
}
