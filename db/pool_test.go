package db_test

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// While every connection is in use requests fail after a while, and once one is free
// they are served again. No connection is lost on the way.
func TestEveryConnectionInUse(t *testing.T) {
	url := dbtest.Clone(t)
	s, err := db.Open(t.Context(), url+"&pool_max_conns=2")
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	db.WaitFor(s, 100*time.Millisecond)
	ctx := t.Context()
	use := func(s *db.Store) map[string]error {
		_, row := s.AnyPlayer(ctx)
		_, rows := s.Courses(ctx, 1)
		return map[string]error{"a statement": s.Ping(ctx), "a row": row, "rows": rows, "a transaction": s.Tx(ctx, func(*db.Store) error { return nil })}
	}
	for range 5 {
		err := s.Tx(ctx, func(*db.Store) error {
			return s.Tx(ctx, func(*db.Store) error {
				for what, err := range use(s) {
					if !errors.Is(err, db.ErrUnavailable) {
						t.Errorf("%s: %v", what, err)
					}
				}
				gone, cancel := context.WithCancel(ctx)
				cancel()
				if err := s.Ping(gone); !errors.Is(err, context.Canceled) {
					t.Errorf("a client that is gone: %v", err)
				}
				return errors.New("undone")
			})
		})
		if err == nil || err.Error() != "undone" {
			t.Error(err)
		}
		for what, err := range use(s) {
			if err != nil {
				t.Errorf("%s after: %v", what, err)
			}
		}
	}
}

// A value that the driver cannot encode is our fault, not that of the server.
func TestAValueThatCannotBeSent(t *testing.T) {
	s := dbtest.Tx(t)
	err := db.Change(t.Context(), s, `update players set target = @target`, pgx.StrictNamedArgs{"target": struct{ odd chan int }{}})
	if err == nil || errors.Is(err, db.ErrUnavailable) || !strings.Contains(err.Error(), "encode") {
		t.Errorf("%v", err)
	}
}

func TestAStatementThatTakesTooLong(t *testing.T) {
	s, err := db.Open(t.Context(), dbtest.Clone(t)+"&statement_timeout=50")
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if err := db.Change(t.Context(), s, `select pg_sleep(60)`, pgx.StrictNamedArgs{}); !errors.Is(err, db.ErrUnavailable) {
		t.Errorf("%v", err)
	}
}

// The settings of the tests' server keep acknowledged writes.
func TestTheTestsServerWritesThrough(t *testing.T) {
	s := dbtest.Tx(t)
	for _, name := range []string{"fsync", "full_page_writes", "synchronous_commit"} {
		if on, err := db.Setting(t.Context(), s, name); err != nil || on != "on" {
			t.Errorf("%s is %q, %v", name, on, err)
		}
	}
}
