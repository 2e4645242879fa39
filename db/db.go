// Package db stores accounts, courses and rounds in Postgres. Every method on a
// player's data takes the player who asks and filters by it in the statement, so that
// a stranger gets golf.ErrNotFound. Errors of the driver do not leave the package.
//
// It answers "what is stored?" and does not know what the numbers mean: summing up a
// round is the engine's work.
package db

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/pgxpool"
)

// querier is what a pool and a transaction share.
type querier interface {
	Exec(ctx context.Context, sql string, args ...any) (pgconn.CommandTag, error)
	Query(ctx context.Context, sql string, args ...any) (pgx.Rows, error)
	SendBatch(ctx context.Context, b *pgx.Batch) pgx.BatchResults
	Begin(ctx context.Context) (pgx.Tx, error)
	CopyFrom(ctx context.Context, table pgx.Identifier, columns []string, rows pgx.CopyFromSource) (int64, error)
}

// Store is the database, or one transaction of it. It may be shared between
// goroutines when it is the database.
type Store struct {
	q    querier
	pool *pgxpool.Pool // nil inside a transaction
}

// Open connects to a server by its URL, waits for it up to half a minute, and
// brings the schema up to date.
func Open(ctx context.Context, url string) (*Store, error) {
	requests, schema, err := readURL(url)
	if err != nil {
		return nil, err
	}
	if err := prepare(ctx, schema); err != nil {
		return nil, err
	}
	pool, err := pgxpool.NewWithConfig(ctx, requests)
	if err != nil {
		return nil, fmt.Errorf("the database: %w", err)
	}
	return &Store{q: patient{pool, acquireTime}, pool: pool}, nil
}

// prepare waits for the server and brings the schema up to date.
func prepare(ctx context.Context, config *pgxpool.Config) error {
	pool, err := pgxpool.NewWithConfig(ctx, config)
	if err != nil {
		return fmt.Errorf("the database: %w", err)
	}
	defer pool.Close()
	if err := wait(ctx, pool); err != nil {
		return err
	}
	if err := migrate(ctx, pool); err != nil {
		return fmt.Errorf("the schema of the database: %w", err)
	}
	return nil
}

// wait tries until the server answers: the app may start before it.
func wait(ctx context.Context, pool *pgxpool.Pool) error {
	ctx, cancel := context.WithTimeout(ctx, 30*time.Second)
	defer cancel()
	for {
		err := pool.Ping(ctx)
		if err == nil {
			return nil
		}
		select {
		case <-ctx.Done():
			return fmt.Errorf("the database does not answer: %w", err)
		case <-time.After(300 * time.Millisecond):
		}
	}
}

// Within returns a store that works inside a transaction that the caller began.
func Within(tx pgx.Tx) *Store { return &Store{q: tx} }

// Close ends every connection.
func (s *Store) Close() { s.pool.Close() }

// Ping reports whether the server answers.
func (s *Store) Ping(ctx context.Context) error {
	_, err := s.q.Exec(ctx, "select 1")
	return translate(err)
}

// Tx runs work in one transaction, which is rolled back when work fails.
func (s *Store) Tx(ctx context.Context, work func(*Store) error) error {
	tx, err := s.q.Begin(ctx)
	if err != nil {
		return translate(err)
	}
	defer tx.Rollback(context.WithoutCancel(ctx))
	if err := work(Within(tx)); err != nil {
		return err
	}
	return translate(tx.Commit(ctx))
}
