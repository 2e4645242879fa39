package dbtest

import (
	"context"
	"sync/atomic"
	"testing"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"

	"strokeledger/db"
)

// Counted returns a store as Tx does, and a counter of its trips to the database. A
// query, a statement, a batch, and the beginning and the end of a transaction count as
// one each.
func Counted(t testing.TB) (*db.Store, *atomic.Int64) {
	t.Helper()
	tx, err := pool.Begin(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { tx.Rollback(context.Background()) })
	if _, err := tx.Exec(t.Context(), restartNumbers); err != nil {
		t.Fatal(err)
	}
	trips := new(atomic.Int64)
	return db.Within(counted{tx, trips}), trips
}

// restartNumbers makes the first row of every table number 1 again, whatever tests
// that were rolled back have used up.
const restartNumbers = `do $$ declare s regclass; begin
	for s in select oid from pg_class where relkind = 'S' and relnamespace = 'public'::regnamespace loop
		execute format('alter sequence %s restart', s);
	end loop;
end $$`

// counted is a transaction that counts its trips.
type counted struct {
	pgx.Tx
	trips *atomic.Int64
}

func (c counted) Exec(ctx context.Context, sql string, args ...any) (pgconn.CommandTag, error) {
	c.trips.Add(1)
	return c.Tx.Exec(ctx, sql, args...)
}

func (c counted) Query(ctx context.Context, sql string, args ...any) (pgx.Rows, error) {
	c.trips.Add(1)
	return c.Tx.Query(ctx, sql, args...)
}

func (c counted) SendBatch(ctx context.Context, b *pgx.Batch) pgx.BatchResults {
	c.trips.Add(1)
	return c.Tx.SendBatch(ctx, b)
}

func (c counted) CopyFrom(ctx context.Context, table pgx.Identifier, columns []string, rows pgx.CopyFromSource) (int64, error) {
	c.trips.Add(1)
	return c.Tx.CopyFrom(ctx, table, columns, rows)
}

func (c counted) Begin(ctx context.Context) (pgx.Tx, error) {
	c.trips.Add(1)
	tx, err := c.Tx.Begin(ctx)
	return counted{tx, c.trips}, err
}

func (c counted) Commit(ctx context.Context) error {
	c.trips.Add(1)
	return c.Tx.Commit(ctx)
}
