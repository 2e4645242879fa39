package db

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"os"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"

	"strokeledger/analysis/golf"
)

// ErrTaken says that the name or address is in use already.
var ErrTaken = errors.New("taken")

// ErrUnavailable says that the database could not be reached or gave up; the same
// request may work later.
var ErrUnavailable = errors.New("the database is not available")

// translate turns an error of the driver into one of ours and keeps the driver's
// text for the log. An error that trying again cannot cure, such as a value that
// the driver cannot encode, becomes a plain one.
func translate(err error) error {
	var pg *pgconn.PgError
	switch {
	case err == nil:
		return nil
	case errors.Is(err, pgx.ErrNoRows):
		return golf.ErrNotFound
	case errors.Is(err, context.Canceled):
		return context.Canceled
	case errors.Is(err, ErrUnavailable):
		return err
	case errors.As(err, &pg):
		return translateServer(pg)
	case lostConnection(err):
		return fmt.Errorf("%w: %s", ErrUnavailable, err)
	}
	return fmt.Errorf("the driver: %s", err)
}

// translateServer turns an error that Postgres itself reported into one of ours.
// Source of the codes: PostgreSQL 15, appendix A, PostgreSQL Error Codes.
func translateServer(pg *pgconn.PgError) error {
	const (
		uniqueViolation  = "23505"
		lockNotAvailable = "55P03"
		idleInTxTimeout  = "25P03"
	)
	if pg.Code == uniqueViolation {
		return fmt.Errorf("%w: %s", ErrTaken, pg.ConstraintName)
	}
	switch class := pg.Code[:min(2, len(pg.Code))]; {
	case class == "08", // connection_exception
		class == "40", // transaction_rollback: serialization_failure, deadlock_detected
		class == "53", // insufficient_resources
		class == "57", // operator_intervention: shutting down, starting up, a statement that took too long
		pg.Code == lockNotAvailable, pg.Code == idleInTxTimeout:
		return fmt.Errorf("%w: %s %s", ErrUnavailable, pg.Code, pg.Message)
	}
	return fmt.Errorf("postgres %s: %s %s", pg.Code, pg.Message, pg.ConstraintName)
}

// lostConnection reports whether an error comes from a connection that could not
// be made, broke or took too long.
func lostConnection(err error) bool {
	var connect *pgconn.ConnectError
	var network net.Error
	for _, lost := range []error{context.DeadlineExceeded, os.ErrDeadlineExceeded, io.EOF, io.ErrUnexpectedEOF, net.ErrClosed, pgconn.ErrConnClosed} {
		if errors.Is(err, lost) {
			return true
		}
	}
	return errors.As(err, &connect) || errors.As(err, &network) || pgconn.Timeout(err)
}

// one reads the only row of a query; no row is golf.ErrNotFound.
func one[T any](ctx context.Context, q querier, to pgx.RowToFunc[T], sql string, args pgx.StrictNamedArgs) (T, error) {
	rows, err := q.Query(ctx, sql, args)
	if err != nil {
		var none T
		return none, translate(err)
	}
	v, err := pgx.CollectExactlyOneRow(rows, to)
	return v, translate(err)
}

// many reads the rows of a query.
func many[T any](ctx context.Context, q querier, to pgx.RowToFunc[T], sql string, args pgx.StrictNamedArgs) ([]T, error) {
	rows, err := q.Query(ctx, sql, args)
	if err != nil {
		return nil, translate(err)
	}
	all, err := pgx.CollectRows(rows, to)
	return all, translate(err)
}

// change runs a statement and returns how many rows it changed.
func change(ctx context.Context, q querier, sql string, args pgx.StrictNamedArgs) (int64, error) {
	tag, err := q.Exec(ctx, sql, args)
	return tag.RowsAffected(), translate(err)
}

// changeAll runs the statements of a batch in one trip, all of them or none. The
// last must change a row; otherwise it returns golf.ErrNotFound.
func changeAll(ctx context.Context, q querier, batch *pgx.Batch) error {
	var rows int64
	last := batch.QueuedQueries[batch.Len()-1]
	last.Exec(func(tag pgconn.CommandTag) error {
		rows = tag.RowsAffected()
		return nil
	})
	err := translate(q.SendBatch(ctx, batch).Close())
	if err == nil && rows == 0 {
		return golf.ErrNotFound
	}
	return err
}

// changeOne runs a statement that must change a row; otherwise it returns
// golf.ErrNotFound.
func changeOne(ctx context.Context, q querier, sql string, args pgx.StrictNamedArgs) error {
	n, err := change(ctx, q, sql, args)
	if err == nil && n == 0 {
		return golf.ErrNotFound
	}
	return err
}
