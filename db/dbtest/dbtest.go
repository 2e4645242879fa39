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
	"syscall"
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
	folder, err := os.MkdirTemp(spacious(memory), "ledger-test-")
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
	if err := makeModel(ctx); err != nil {
		return fail(err)
	}
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

// memory is a folder of Linux in memory. A database in it comes and goes several times
// as fast as one on a disk, which every one of them waits for.
const memory = "/dev/shm"

// roomNeeded is how many bytes the databases of a test program may come to.
const roomNeeded = 2 << 30

// spacious is a folder if there is room in it for the databases of tests, and otherwise
// empty, for the usual folder.
func spacious(folder string) string {
	var room syscall.Statfs_t
	if err := syscall.Statfs(folder, &room); err != nil || room.Bavail*uint64(room.Bsize) < roomNeeded {
		return ""
	}
	return folder
}

// model is the database that Copy copies: it has the schema, and nobody is connected
// to it.
const model = "model"

// makeModel makes that database.
func makeModel(ctx context.Context) error {
	admin, err := pgx.Connect(ctx, server.URL)
	if err != nil {
		return err
	}
	defer admin.Close(ctx)
	if _, err := admin.Exec(ctx, "create database "+model); err != nil {
		return err
	}
	store, err := db.Open(ctx, named(model))
	if err != nil {
		return err
	}
	store.Close()
	return nil
}

// named is the URL of a database of the server.
func named(name string) string {
	return strings.Replace(server.URL, "dbname=postgres", "dbname="+name, 1)
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
	return made(t, "")
}

// Copy returns the URL of a database of the test's own with the schema and nothing
// else: as Clone and the migrations make it, in a fraction of the time. It is dropped
// when the test ends.
func Copy(t testing.TB) string {
	t.Helper()
	return made(t, " template "+model)
}

// made makes a database with what its creation says besides the name.
func made(t testing.TB, how string) string {
	t.Helper()
	name := fmt.Sprintf("clone%d", clones.Add(1))
	admin, err := pgx.Connect(t.Context(), server.URL)
	if err != nil {
		t.Fatal(err)
	}
	defer admin.Close(context.Background())
	if _, err := admin.Exec(t.Context(), "create database "+name+how); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if _, err := pool.Exec(context.Background(), "drop database "+name+" with (force)"); err != nil {
			t.Error(err)
		}
	})
	return named(name)
}

// Open returns a store on a database of the test's own, closed when the test
// ends.
func Open(t testing.TB) *db.Store {
	t.Helper()
	store, err := db.Open(t.Context(), Copy(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(store.Close)
	return store
}
