package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Mark is a day that a player marked, such as a lesson or a new driver.
type Mark struct {
	ID       int64
	MarkedOn time.Time
	What     string
}

// NewMark marks a day and returns the ID of the mark.
func (s *Store) NewMark(ctx context.Context, who golf.PlayerID, on golf.Date, what string) (int64, error) {
	return one(ctx, s.q, pgx.RowTo[int64], `insert into marks (player_id, marked_on, what) values (@who, @on, @what) returning id`,
		pgx.StrictNamedArgs{"who": who, "on": on.Time(), "what": what})
}

// RemoveMark deletes a mark.
func (s *Store) RemoveMark(ctx context.Context, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `delete from marks where player_id = @who and id = @id`, pgx.StrictNamedArgs{"who": who, "id": id})
}

// Marks lists the player's marked days that asker may see, the earliest first.
func (s *Store) Marks(ctx context.Context, asker, who golf.PlayerID) ([]Mark, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Mark], `select id, marked_on, what from marks where player_id = @who and marked_on >= `+accessFrom("@asker", "@who")+` order by marked_on, id`,
		pgx.StrictNamedArgs{"asker": asker, "who": who})
}
