package db

import (
	"context"
	"errors"
	"fmt"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"

	"strokeledger/analysis/golf"
)

// ErrTaken says that there is one of that name already.
var ErrTaken = errors.New("taken")

// ErrUnavailable says that the database could not be reached or gave up; the
// same may work again later.
var ErrUnavailable = errors.New("the database is not available")

// told turns an error of the driver into one of ours; what the driver said
// stays in the text for the log.
func told(err error) error {
	if err == nil {
		return nil
	}
	if errors.Is(err, pgx.ErrNoRows) {
		return golf.ErrNotFound
	}
	if errors.Is(err, context.Canceled) {
		return context.Canceled
	}
	var pg *pgconn.PgError
	if errors.As(err, &pg) {
		switch pg.Code {
		case "23505": // unique_violation
			return fmt.Errorf("%w: %s", ErrTaken, pg.ConstraintName)
		case "40001", "40P01", "55P03": // serialization_failure, deadlock_detected, lock_not_available
			return fmt.Errorf("%w: %s", ErrUnavailable, pg.Message)
		}
		return fmt.Errorf("postgres %s: %s %s", pg.Code, pg.Message, pg.ConstraintName)
	}
	return fmt.Errorf("%w: %s", ErrUnavailable, err)
}

// one reads the only row of a query.
func one[T any](ctx context.Context, q querier, to pgx.RowToFunc[T], sql string, args pgx.StrictNamedArgs) (T, error) {
	rows, err := q.Query(ctx, sql, args)
	if err != nil {
		var none T
		return none, told(err)
	}
	v, err := pgx.CollectExactlyOneRow(rows, to)
	return v, told(err)
}

// many reads the rows of a query.
func many[T any](ctx context.Context, q querier, to pgx.RowToFunc[T], sql string, args pgx.StrictNamedArgs) ([]T, error) {
	rows, err := q.Query(ctx, sql, args)
	if err != nil {
		return nil, told(err)
	}
	all, err := pgx.CollectRows(rows, to)
	return all, told(err)
}

// change runs a statement and returns how many rows it changed.
func change(ctx context.Context, q querier, sql string, args pgx.StrictNamedArgs) (int64, error) {
	tag, err := q.Exec(ctx, sql, args)
	return tag.RowsAffected(), told(err)
}

// changeOne runs a statement that must change one row, and says not found
// otherwise.
func changeOne(ctx context.Context, q querier, sql string, args pgx.StrictNamedArgs) error {
	n, err := change(ctx, q, sql, args)
	if err == nil && n == 0 {
		return golf.ErrNotFound
	}
	return err
}
