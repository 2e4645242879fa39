package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// BagClub is a club that a player hits from the tee.
type BagClub struct {
	Club     string  // its name, such as driver
	LengthYd float64 // yards, carry and run; 0 when it follows from the level
	ShapeYd  float64 // yards by which the ball ends beside where it was aimed; left is negative
}

// RangeSession is what came of balls hit on the range with one club and one aim.
type RangeSession struct {
	ID    int64
	Club  string
	Day   time.Time
	Balls string // as typed, a ball a line
}

// SaveBag replaces the clubs of the player's bag.
func (s *Store) SaveBag(ctx context.Context, who golf.PlayerID, clubs []BagClub) error {
	batch := &pgx.Batch{}
	batch.Queue(`delete from bag_clubs where player_id = @who`, pgx.StrictNamedArgs{"who": who})
	for _, c := range clubs {
		batch.Queue(`insert into bag_clubs (player_id, club, length_yd, shape_yd) values (@who, @club, @length, @shape)`,
			pgx.StrictNamedArgs{"who": who, "club": c.Club, "length": c.LengthYd, "shape": c.ShapeYd})
	}
	return s.Tx(ctx, func(tx *Store) error { return translate(tx.q.SendBatch(ctx, batch).Close()) })
}

// Bag lists the clubs of a player's bag, the longest first. It is empty for an asker
// who may not see the player.
func (s *Store) Bag(ctx context.Context, asker, who golf.PlayerID) ([]BagClub, error) {
	return many(ctx, s.q, pgx.RowToStructByName[BagClub], `
		select club, length_yd, shape_yd from bag_clubs where player_id = @who and `+accessFrom("@asker", "@who")+` is not null
		order by length_yd desc, club`, pgx.StrictNamedArgs{"asker": asker, "who": who})
}

// RangeSessionsInAll is how many range sessions a player may keep. Common practice: one
// a day for three years.
const RangeSessionsInAll = 1000

// ErrRangeSessionsInAll says that a player has reached it.
var ErrRangeSessionsInAll = fmt.Errorf("range sessions: %w", ErrFull)

// RecordRange keeps a range session of the player's.
func (s *Store) RecordRange(ctx context.Context, who golf.PlayerID, r RangeSession) (int64, error) {
	n, err := one(ctx, s.q, pgx.RowTo[int], `select count(*) from range_sessions where player_id = @who and removed_at is null`, pgx.StrictNamedArgs{"who": who})
	if err != nil {
		return 0, err
	}
	if n >= RangeSessionsInAll {
		return 0, ErrRangeSessionsInAll
	}
	return one(ctx, s.q, pgx.RowTo[int64], `insert into range_sessions (player_id, club, day, balls) values (@who, @club, @day, @balls) returning id`,
		pgx.StrictNamedArgs{"who": who, "club": r.Club, "day": r.Day, "balls": r.Balls})
}

// RangeSessions lists the player's range sessions that asker may see, the latest
// first.
func (s *Store) RangeSessions(ctx context.Context, asker, who golf.PlayerID, most int) ([]RangeSession, error) {
	return many(ctx, s.q, pgx.RowToStructByName[RangeSession], `
		select id, club, day, balls from range_sessions
		where player_id = @who and removed_at is null and day >= `+accessFrom("@asker", "@who")+`
		order by day desc, recorded_at desc, id limit @most`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "most": limit(most)})
}

// RemoveRange removes a range session of the player's.
func (s *Store) RemoveRange(ctx context.Context, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update range_sessions set removed_at = now() where player_id = @who and id = @id and removed_at is null`,
		pgx.StrictNamedArgs{"who": who, "id": id})
}

// RestoreRange brings it back.
func (s *Store) RestoreRange(ctx context.Context, who golf.PlayerID, id int64) error {
	return s.Tx(ctx, func(tx *Store) error {
		if err := changeOne(ctx, tx.q, `update range_sessions set removed_at = null where player_id = @who and id = @id and `+back,
			pgx.StrictNamedArgs{"who": who, "id": id}); err != nil {
			return err
		}
		n, err := one(ctx, tx.q, pgx.RowTo[int], `select count(*) from range_sessions where player_id = @who and removed_at is null`, pgx.StrictNamedArgs{"who": who})
		if err == nil && n > RangeSessionsInAll {
			err = ErrRangeSessionsInAll
		}
		return err
	})
}
