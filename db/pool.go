package db

import (
	"context"
	"fmt"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/pgxpool"
)

// The limits of connections. A setting in the URL overrides them.
const (
	poolSize       = 10
	connectTime    = 5 * time.Second
	statementTime  = 30 * time.Second
	idleInTxTime   = time.Minute
	acquireTime    = 5 * time.Second // how long a request waits for a free connection
	poolSizeOfURL  = "pool_max_conns"
	statementLimit = "statement_timeout"
	idleInTxLimit  = "idle_in_transaction_session_timeout"
)

// readURL reads how to connect: for requests, and for migrations, which may take as
// long as they need.
func readURL(url string) (requests, schema *pgxpool.Config, err error) {
	requests, err = pgxpool.ParseConfig(url)
	if err != nil {
		return nil, nil, fmt.Errorf("the database URL cannot be read: %w", err)
	}
	if !strings.Contains(url, poolSizeOfURL) {
		requests.MaxConns = poolSize
	}
	if requests.ConnConfig.ConnectTimeout == 0 {
		requests.ConnConfig.ConnectTimeout = connectTime
	}
	schema = requests.Copy()
	schema.MaxConns = 2
	for name, limit := range map[string]time.Duration{statementLimit: statementTime, idleInTxLimit: idleInTxTime} {
		schema.ConnConfig.RuntimeParams[name] = "0"
		if _, named := requests.ConnConfig.RuntimeParams[name]; !named {
			requests.ConnConfig.RuntimeParams[name] = fmt.Sprint(limit.Milliseconds())
		}
	}
	return requests, schema, nil
}

// patient is a pool that waits for a connection only so long: when all stay in use,
// the request fails instead of standing in line.
type patient struct {
	pool *pgxpool.Pool
	wait time.Duration
}

// acquire takes a connection; the caller releases it.
func (p patient) acquire(ctx context.Context) (*pgxpool.Conn, error) {
	limited, cancel := context.WithTimeout(ctx, p.wait)
	defer cancel()
	c, err := p.pool.Acquire(limited)
	if err == nil {
		return c, nil
	}
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	return nil, fmt.Errorf("%w: no connection: %w", ErrUnavailable, err)
}

func (p patient) Exec(ctx context.Context, sql string, args ...any) (pgconn.CommandTag, error) {
	c, err := p.acquire(ctx)
	if err != nil {
		return pgconn.CommandTag{}, err
	}
	defer c.Release()
	return c.Exec(ctx, sql, args...)
}

func (p patient) Query(ctx context.Context, sql string, args ...any) (pgx.Rows, error) {
	c, err := p.acquire(ctx)
	if err != nil {
		return nil, err
	}
	rows, err := c.Query(ctx, sql, args...)
	if err != nil {
		c.Release()
		return nil, err
	}
	return &heldRows{rows, c}, nil
}

func (p patient) SendBatch(ctx context.Context, b *pgx.Batch) pgx.BatchResults {
	c, err := p.acquire(ctx)
	if err != nil {
		return noBatch{err}
	}
	return &heldBatch{c.SendBatch(ctx, b), c}
}

func (p patient) CopyFrom(ctx context.Context, table pgx.Identifier, columns []string, rows pgx.CopyFromSource) (int64, error) {
	c, err := p.acquire(ctx)
	if err != nil {
		return 0, err
	}
	defer c.Release()
	return c.CopyFrom(ctx, table, columns, rows)
}

func (p patient) Begin(ctx context.Context) (pgx.Tx, error) {
	c, err := p.acquire(ctx)
	if err != nil {
		return nil, err
	}
	tx, err := c.Begin(ctx)
	if err != nil {
		c.Release()
		return nil, err
	}
	return &heldTx{tx, c}, nil
}

// heldRows, heldBatch and heldTx release their connection once they are done with it.
type heldRows struct {
	pgx.Rows
	c *pgxpool.Conn
}

// Next closes the rows after the last, as the driver's own does.
func (r *heldRows) Next() bool {
	more := r.Rows.Next()
	if !more {
		r.Close()
	}
	return more
}

func (r *heldRows) Close() {
	r.Rows.Close()
	if r.c != nil {
		r.c.Release()
		r.c = nil
	}
}

type heldBatch struct {
	pgx.BatchResults
	c *pgxpool.Conn
}

func (b *heldBatch) Close() error {
	err := b.BatchResults.Close()
	if b.c != nil {
		b.c.Release()
		b.c = nil
	}
	return err
}

type heldTx struct {
	pgx.Tx
	c *pgxpool.Conn
}

func (t *heldTx) release() {
	if t.c != nil {
		t.c.Release()
		t.c = nil
	}
}

func (t *heldTx) Commit(ctx context.Context) error {
	err := t.Tx.Commit(ctx)
	t.release()
	return err
}

// Rollback ends a transaction that is still open; after Commit it does nothing.
func (t *heldTx) Rollback(ctx context.Context) error {
	if t.c == nil {
		return pgx.ErrTxClosed
	}
	err := t.Tx.Rollback(ctx)
	t.release()
	return err
}

// noBatch is the result of a batch that was never sent.
type noBatch struct{ err error }

func (b noBatch) Exec() (pgconn.CommandTag, error) { return pgconn.CommandTag{}, b.err }
func (b noBatch) Query() (pgx.Rows, error)         { return nil, b.err }
func (b noBatch) QueryRow() pgx.Row                { return noRow(b) }
func (b noBatch) Close() error                     { return b.err }
func (b noBatch) Tx() pgx.Tx                       { return nil }

type noRow struct{ err error }

func (r noRow) Scan(...any) error { return r.err }
