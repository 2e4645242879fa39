package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"
)

// The statements whose plans are tested.
var (
	PlayedRounds       = playedRounds
	PlayedShots        = playedShots
	RosterStatement    = roster
	SummariesStatement = summaries
)

// WaitFor sets how long a store waits for a connection.
func WaitFor(s *Store, wait time.Duration) { s.q = patient{s.pool, wait} }

// Change runs a statement the way methods do.
func Change(ctx context.Context, s *Store, sql string, args pgx.StrictNamedArgs) error {
	_, err := change(ctx, s.q, sql, args)
	return err
}

// Setting reads a setting of the server.
func Setting(ctx context.Context, s *Store, name string) (string, error) {
	return one(ctx, s.q, pgx.RowTo[string], `select current_setting(@name)`, pgx.StrictNamedArgs{"name": name})
}

// Text reads a text from the database.
func Text(ctx context.Context, s *Store, sql string) (string, error) {
	return one(ctx, s.q, pgx.RowTo[string], sql, pgx.StrictNamedArgs{})
}
