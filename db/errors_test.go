package db

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"strings"
	"syscall"
	"testing"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"

	"strokeledger/analysis/golf"
)

func TestErrorsOfTheDriverAreTranslated(t *testing.T) {
	_, unreachable := pgconn.Connect(t.Context(), "postgres:///?host="+t.TempDir())
	if unreachable == nil {
		t.Fatal("connected to nothing")
	}
	code := func(code string) error {
		return &pgconn.PgError{Code: code, Message: "said", ConstraintName: "its_key"}
	}
	ours := []error{golf.ErrNotFound, ErrTaken, ErrUnavailable, context.Canceled}
	for _, c := range []struct {
		name string
		err  error
		want error // nil for a plain error
	}{
		{"no row", pgx.ErrNoRows, golf.ErrNotFound},
		{"two rows", pgx.ErrTooManyRows, nil},
		{"the client is gone", fmt.Errorf("query: %w", context.Canceled), context.Canceled},
		{"a name that is taken", code("23505"), ErrTaken},
		{"a foreign key", code("23503"), nil},
		{"a check", code("23514"), nil},
		{"wrong SQL", code("42601"), nil},
		{"a number too large", code("22003"), nil},
		{"the server's own fault", code("XX000"), nil},
		{"no code", code(""), nil},
		{"serialization", code("40001"), ErrUnavailable},
		{"deadlock", code("40P01"), ErrUnavailable},
		{"a lock", code("55P03"), ErrUnavailable},
		{"the connection broke", code("08006"), ErrUnavailable},
		{"too many connections", code("53300"), ErrUnavailable},
		{"the disk is full", code("53100"), ErrUnavailable},
		{"stopping", code("57P01"), ErrUnavailable},
		{"starting", code("57P03"), ErrUnavailable},
		{"a statement took too long", code("57014"), ErrUnavailable},
		{"idle in a transaction", code("25P03"), ErrUnavailable},
		{"aborted transaction", code("25P02"), nil},
		{"nobody listens", unreachable, ErrUnavailable},
		{"the deadline", fmt.Errorf("timeout: %w", context.DeadlineExceeded), ErrUnavailable},
		{"the connection ended", fmt.Errorf("receive: %w", io.ErrUnexpectedEOF), ErrUnavailable},
		{"the connection was reset", &net.OpError{Op: "read", Err: syscall.ECONNRESET}, ErrUnavailable},
		{"the connection is closed", fmt.Errorf("begin: %w", pgconn.ErrConnClosed), ErrUnavailable},
		{"no connection is free", fmt.Errorf("%w: waited", ErrUnavailable), ErrUnavailable},
		{"a value that cannot be sent", errors.New("failed to encode args[0]: unable to encode"), nil},
		{"a closed transaction", pgx.ErrTxClosed, nil},
	} {
		got := translate(c.err)
		if got == nil {
			t.Errorf("%s: no error", c.name)
			continue
		}
		for _, one := range ours {
			if errors.Is(got, one) != (one == c.want) {
				t.Errorf("%s: %v", c.name, got)
			}
		}
		if c.want == nil && !strings.Contains(got.Error(), c.err.Error()) && !strings.Contains(got.Error(), "said") {
			t.Errorf("%s: the log would not say what happened: %v", c.name, got)
		}
	}
	if translate(nil) != nil {
		t.Error("no error becomes one")
	}
}

func TestTheSettingsOfAConnection(t *testing.T) {
	requests, schema, err := readURL("postgres://h/d")
	if err != nil {
		t.Fatal(err)
	}
	if requests.MaxConns != 10 || requests.ConnConfig.RuntimeParams["statement_timeout"] != "30000" || requests.ConnConfig.RuntimeParams["idle_in_transaction_session_timeout"] != "60000" || requests.ConnConfig.ConnectTimeout == 0 {
		t.Errorf("%d %v", requests.MaxConns, requests.ConnConfig.RuntimeParams)
	}
	if schema.ConnConfig.RuntimeParams["statement_timeout"] != "0" {
		t.Error("migrations have a time limit")
	}
	if requests, _, err = readURL("postgres://h/d?pool_max_conns=3&statement_timeout=7000"); err != nil || requests.MaxConns != 3 || requests.ConnConfig.RuntimeParams["statement_timeout"] != "7000" {
		t.Errorf("the URL's own: %v, %v", requests, err)
	}
	if _, _, err := readURL("postgres://h:x/d"); err == nil || !strings.Contains(err.Error(), "cannot be read") {
		t.Errorf("%v", err)
	}
}
