// Package dbtest gives tests a real Postgres: one private server for a test program,
// and for each test a transaction that is rolled back, or a database of its own where
// it needs several connections.
package dbtest

import (
	"context"
	"fmt"
	"os"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"strokeledger/db"
	"strokeledger/db/local"
)

var (
	server *local.Server
	pool   *pgxpool.Pool
	clones atomic.Int64
)

// Run starts the server, runs the tests and stops it. A test program calls it
// from TestMain and exits with its result. A missing server fails the tests.
func Run(m *testing.M) int {
	folder, err := os.MkdirTemp("", "ledger-test-")
	if err != nil {
		return fail(err)
	}
	defer os.RemoveAll(folder)
	if err := os.Chmod(folder, 0o755); err != nil {
		return fail(err)
	}
	if server, err = local.StartThrowaway(folder + "/pg"); err != nil {
		return fail(err)
	}
	defer server.Stop()
	ctx := context.Background()
	store, err := db.Open(ctx, server.URL)
	if err != nil {
		return fail(err)
	}
	store.Close() // it has brought the schema up to date
	if pool, err = pgxpool.New(ctx, server.URL); err != nil {
		return fail(err)
	}
	defer pool.Close()
	return m.Run()
}

func fail(err error) int {
	fmt.Fprintln(os.Stderr, "dbtest:", err)
	return 1
}

// Tx returns a store inside a transaction that is rolled back when the test
// ends.
func Tx(t testing.TB) *db.Store {
	t.Helper()
	tx, err := pool.Begin(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { tx.Rollback(context.Background()) })
	return db.Within(tx)
}

// Clone returns the URL of an empty database of the test's own, without tables. It is
// dropped when the test ends.
func Clone(t testing.TB) string {
	t.Helper()
	name := fmt.Sprintf("clone%d", clones.Add(1))
	admin, err := pgx.Connect(t.Context(), server.URL)
	if err != nil {
		t.Fatal(err)
	}
	defer admin.Close(context.Background())
	if _, err := admin.Exec(t.Context(), "create database "+name); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if _, err := pool.Exec(context.Background(), "drop database "+name+" with (force)"); err != nil {
			t.Error(err)
		}
	})
	return strings.Replace(server.URL, "dbname=postgres", "dbname="+name, 1)
}

// Open returns a store on a database of the test's own, closed when the test
// ends.
func Open(t testing.TB) *db.Store {
	t.Helper()
	store, err := db.Open(t.Context(), Clone(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(store.Close)
	return store
}
